import { useEffect, useState } from "preact/hooks";
import type { TestImporter } from "../../compute/testImporter.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { goTo, packHref } from "../addresses.ts";
import { usePackInUse } from "../referencePack.ts";
import { MergePacks } from "./MergePacks.tsx";
import { PackList } from "./PackList.tsx";
import { PlatformEditor } from "./PlatformEditor.tsx";
import { takeOvertaken } from "./packEdits.ts";
import { type PackRoute, packMergeHref } from "./packRoutes.ts";
import { RulesEditor } from "./RulesEditor.tsx";
import { StopEditor } from "./StopEditor.tsx";
import { TestImportScreen } from "./TestImportScreen.tsx";
import { TestReport } from "./TestReport.tsx";
import "../answer/answer.css";
import "../charts/charts.css";
import "../styles/check.css";
import "./pack.css";
import { OneMoment } from "../parts/OneMoment.tsx";

export interface PackPlaceProps {
  readonly route: PackRoute;
  readonly unit: LengthUnit;
  /** Another importer than the worker's, where there is no worker. */
  readonly startImporter?: () => TestImporter;
}

interface Other {
  readonly pack: Pack;
  readonly name: string;
}

/** The parts library: its list, its items, test data, merging. */
export default function PackPlace({ route, unit, startImporter }: PackPlaceProps) {
  const inUse = usePackInUse();
  const [other, setOther] = useState<Other | null>(null);
  const merging = route.place === "merge";
  useEffect(() => {
    if (!merging || !inUse) return;
    const overtaken = takeOvertaken();
    if (overtaken !== null) {
      setOther({ pack: overtaken, name: messages.asYouHadChanged({ name: overtaken.name }) });
    } else if (other === null) goTo(packHref, { replace: true });
  }, [merging, inUse, other]);

  if (!inUse) return <OneMoment />;
  const { pack } = inUse;
  switch (route.place) {
    case "list":
      return (
        <PackList
          inUse={inUse}
          unit={unit}
          onMerge={(theirs, file) => {
            setOther({ pack: theirs, name: theirs.name || file });
            goTo(packMergeHref);
          }}
        />
      );
    case "rules":
      return <RulesEditor pack={pack} unit={unit} />;
    case "stop":
      return <StopEditor pack={pack} id={route.id} unit={unit} />;
    case "platform":
      return <PlatformEditor pack={pack} id={route.id} unit={unit} />;
    case "tests":
      return (
        <TestImportScreen pack={pack} id={route.id} unit={unit} startImporter={startImporter} />
      );
    case "report":
      return <TestReport pack={pack} id={route.id} test={route.test} unit={unit} />;
    case "merge":
      return other ? (
        <MergePacks mine={pack} theirs={other.pack} theirsName={other.name} unit={unit} />
      ) : (
        <OneMoment />
      );
  }
}
