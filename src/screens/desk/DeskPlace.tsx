import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { DeskCheck } from "../../records/review/decision.ts";
import { isFiltered, viewed, wholeView } from "../../records/review/deskList.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { goTo } from "../addresses.ts";
import type { ScanScreenProps } from "../exchange/ScanScreen.tsx";
import { keepFilesForDesks } from "../offline/filesForDesks.ts";
import { later } from "../parts/later.tsx";
import { useWide } from "../parts/useWide.ts";
import type { CheckAtDeskProps } from "./CheckAtDesk.tsx";
import { CheckList } from "./CheckList.tsx";
import { DeskList, type ListPlace } from "./DeskList.tsx";
import { type DeskRoute, deskCheckHref, deskHref } from "./deskRoutes.ts";
import type { FindingsScreenProps } from "./findings/FindingsScreen.tsx";
import type { PartsAtDeskProps } from "./PartsAtDesk.tsx";
import type { PeopleAtDeskProps } from "./PeopleAtDesk.tsx";
import type { ReportProps } from "./Report.tsx";
import { sourceOfCode } from "./sources.ts";
import { type DeskSurroundings, useDesk } from "./useDesk.ts";
import "../styles/panes.css";
import "./desk.css";
import "../exchange/exchange.css";

const CheckAtDesk = later<CheckAtDeskProps>(
  async () => (await import("./CheckAtDesk.tsx")).CheckAtDesk,
);
const FindingsScreen = later<FindingsScreenProps>(
  async () => (await import("./findings/FindingsScreen.tsx")).FindingsScreen,
);
const Report = later<ReportProps>(async () => (await import("./Report.tsx")).Report);
const PartsAtDesk = later<PartsAtDeskProps>(
  async () => (await import("./PartsAtDesk.tsx")).PartsAtDesk,
);
const PeopleAtDesk = later<PeopleAtDeskProps>(
  async () => (await import("./PeopleAtDesk.tsx")).PeopleAtDesk,
);
const ScanScreen = later<ScanScreenProps>(
  async () => (await import("../exchange/ScanScreen.tsx")).default,
);

export interface DeskPlaceProps {
  readonly route: DeskRoute;
  readonly unit: LengthUnit;
  readonly surroundings?: DeskSurroundings;
  readonly startAssessor?: () => Assessor;
}

/** From here on the list has room beside the check and what is decided on it, px. */
const roomForList = 1200;

const toDesk = () => goTo(deskHref);

/** The desk: its list, one check, its report, and the camera. */
export function DeskPlace({ route, unit, surroundings, startAssessor }: DeskPlaceProps) {
  const desk = useDesk(surroundings);
  useEffect(keepFilesForDesks, []);
  const [place, setPlace] = useState<ListPlace>({ view: wholeView, at: null });
  const key = "key" in route ? route.key : null;
  const roomy = useWide(roomForList);
  const { shown, open, next, nextNew } = useMemo(() => {
    if (key === null || desk.checks === null) {
      return { shown: [], open: null, next: null, nextNew: null };
    }
    const shown = viewed(desk.checks, place.view);
    const at = shown.findIndex(({ versions }) => versions.some((version) => version.key === key));
    const isNew = (check: DeskCheck) => check.state === "new" && check !== shown[at];
    const after = shown.slice(at + 1);
    return {
      shown,
      open: shown[at]?.latest.checkId ?? null,
      next: after[0]?.latest.key ?? null,
      nextNew: (after.find(isNew) ?? shown.find(isNew))?.latest.key ?? null,
    };
  }, [desk.checks, place.view, key]);
  // The list follows to the check that is open, also where "Next check" led to it.
  useEffect(() => {
    if (open !== null) setPlace((before) => ({ ...before, at: open }));
  }, [open]);

  if (route.place === "scan") {
    return (
      <ScanScreen
        onWhole={(frame) => {
          desk.take(sourceOfCode(frame));
          toDesk();
        }}
        onLeave={toDesk}
      />
    );
  }
  if (route.place === "findings") {
    return (
      <FindingsScreen
        desk={desk}
        checks={viewed(desk.checks ?? [], place.view)}
        filtered={isFiltered(place.view)}
        unit={unit}
        onLeave={toDesk}
      />
    );
  }
  if (route.place === "parts") return <PartsAtDesk desk={desk} unit={unit} onLeave={toDesk} />;
  if (route.place === "people") return <PeopleAtDesk desk={desk} unit={unit} onLeave={toDesk} />;
  if (route.place === "check") {
    return (
      <div class={roomy ? "two-panes" : undefined}>
        {roomy && (
          <aside class="desk-beside" aria-label={messages.checksAtThisReview}>
            <CheckList
              checks={shown}
              at={place.at}
              onAt={(at) => setPlace((before) => ({ ...before, at }))}
              onOpen={({ latest }) => goTo(deskCheckHref(latest.key))}
              shared={desk.shared}
            />
          </aside>
        )}
        <div>
          <CheckAtDesk
            desk={desk}
            submissionKey={route.key}
            unit={unit}
            next={next}
            nextNew={nextNew}
            onLeave={toDesk}
            onNext={(following) => goTo(deskCheckHref(following))}
            startAssessor={startAssessor}
          />
        </div>
      </div>
    );
  }
  if (route.place === "report") {
    return (
      <Report
        desk={desk}
        submissionKey={route.key}
        unit={unit}
        onLeave={() => goTo(deskCheckHref(route.key))}
        startAssessor={startAssessor}
      />
    );
  }
  return (
    <DeskList
      desk={desk}
      unit={unit}
      place={place}
      onPlace={setPlace}
      onOpen={({ latest }) => goTo(deskCheckHref(latest.key))}
    />
  );
}
