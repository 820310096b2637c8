import { useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type { Assessment, CornerAssessment, Fitment, Side } from "../../../physics/fitment.ts";
import { progressiveContactFactor, rulesOf } from "../../../physics/road/index.ts";
import { cornerContext, impactAssumptions } from "../../../physics/worked/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { sideWords } from "../../assessment/stateWords.ts";
import { useHeightClassMap } from "../../assessment/useHeightClassMap.ts";
import { Segmented } from "../../parts/Choices.tsx";
import { AfterHitView } from "../afterHit/AfterHit.tsx";
import { afterHit } from "../afterHit/afterHit.ts";
import { FromTest } from "../afterHit/FromTest.tsx";
import type { ComparedStop } from "../compare/comparedStop.ts";
import { Contacts } from "../contacts/Contacts.tsx";
import { contactsByRoad } from "../contacts/contactsByRoad.ts";
import { HeightClassMap } from "../map/HeightClassMap.tsx";
import { WheelForceChart } from "../wheelForce/WheelForceChart.tsx";
import { wheelForceCurve } from "../wheelForce/wheelForceCurve.ts";
import { Impact } from "./Impact.tsx";
import "./sideCharts.css";

/** The drawings of one side at a time; both sides where there are two, by a switch. */
export function Charts({
  assessor,
  fitment,
  assessment,
  other,
  unit,
}: {
  assessor: Assessor;
  fitment: Fitment;
  assessment: Assessment;
  /** Shown against this stop: the one picked to compare, or the one proposed. */
  other: ComparedStop | null;
  unit: LengthUnit;
}) {
  const sides = assessment.corners.map(({ side }) => side);
  const [picked, setPicked] = useState<Side>(sides[0] ?? "left");
  const side = sides.includes(picked) ? picked : (sides[0] ?? "left");
  const assessed = assessment.corners.find((corner) => corner.side === side);
  if (!assessed) return null;
  return (
    <div class="stack charts-of-sides">
      {sides.length > 1 && (
        <Segmented
          legend={messages.sideShown}
          options={sides.map((one) => ({ value: one, name: sideWords[one] }))}
          value={side}
          onChange={setPicked}
        />
      )}
      <SideCharts
        key={side}
        assessor={assessor}
        fitment={fitment}
        assessed={assessed}
        other={other}
        unit={unit}
      />
    </div>
  );
}

function SideCharts({
  assessor,
  fitment,
  assessed,
  other,
  unit,
}: {
  assessor: Assessor;
  fitment: Fitment;
  assessed: CornerAssessment;
  other: ComparedStop | null;
  unit: LengthUnit;
}) {
  const { side } = assessed;
  const isKnown = assessed.missing.length === 0;
  const isTested = isKnown && afterHit(assessed, unit) !== null;
  const rules = rulesOf(fitment.use, fitment.rules);
  const context = useMemo(() => cornerContext(fitment, assessed), [fitment, assessed]);
  const curve = useMemo(() => curveOf(fitment, assessed), [fitment, assessed]);
  const otherAssessed = other?.assessment.corners.find((corner) => corner.side === side);
  const otherCurve = useMemo(
    () => (other && otherAssessed ? curveOf(other.fitment, otherAssessed) : null),
    [other, otherAssessed],
  );
  const contacts = useMemo(() => {
    const corner = fitment.corners.find((one) => one.side === side);
    return corner ? contactsByRoad(fitment, corner) : null;
  }, [fitment, side]);
  const knowsContacts =
    contacts?.ok && contacts.value.some(({ unladenPerKm }) => unladenPerKm !== null);
  const isAlone = !isKnown && !knowsContacts;
  const assumed = context ? impactAssumptions(context).map(said) : [];
  return (
    <div
      class={`side-charts${isAlone ? " side-charts-alone" : isTested ? " side-charts-tested" : ""}`}
    >
      <div class="side-force">
        {curve?.ok && (
          <WheelForceChart
            heading={messages.forceAtWheel({ side: sideWords[side] })}
            curve={curve.value}
            compared={
              other && otherCurve?.ok
                ? { name: sentenceText(other.name, unit), curve: otherCurve.value }
                : undefined
            }
            unit={unit}
          />
        )}
      </div>
      <div class="side-impact">
        {isKnown && (
          <Impact
            assessor={assessor}
            fitment={fitment}
            assessed={assessed}
            other={other}
            assumed={[...assumed, ...(other?.assumed ?? [])]}
            unit={unit}
          />
        )}
      </div>
      <div class="side-after">
        {isKnown && <AfterHitView fitment={fitment} assessed={assessed} unit={unit} />}
      </div>
      <div class="side-test">
        {isKnown && <FromTest fitment={fitment} assessed={assessed} unit={unit} />}
      </div>
      <div class="side-map">
        {isKnown && (
          <MapOfSide
            assessor={assessor}
            fitment={fitment}
            side={side}
            assumed={assumed}
            unit={unit}
          />
        )}
      </div>
      <div class="side-contacts">
        {contacts?.ok && knowsContacts && (
          <Contacts
            heading={messages.howOftenWheelReaches({ side: sideWords[side] })}
            contacts={contacts.value}
            rules={rules}
            allowedPerKm={
              rules.allowedContactsPerKm * (assessed.progressive ? progressiveContactFactor : 1)
            }
            unit={unit}
          />
        )}
      </div>
    </div>
  );
}

function MapOfSide({
  assessor,
  fitment,
  side,
  assumed,
  unit,
}: {
  assessor: Assessor;
  fitment: Fitment;
  side: Side;
  assumed: readonly string[];
  unit: LengthUnit;
}) {
  const map = useHeightClassMap(assessor, fitment, side, `map ${side}`);
  if (map.fault) return <p>{sentenceText(map.fault.sentence, unit)}</p>;
  return (
    <HeightClassMap
      heading={messages.extraHeightAndStiffness({ side: sideWords[side] })}
      side={side}
      map={map}
      rules={rulesOf(fitment.use, fitment.rules)}
      assumed={[messages.heightIsAddedBy, ...assumed]}
      unit={unit}
    />
  );
}

function curveOf(fitment: Fitment, assessed: CornerAssessment) {
  const corner = fitment.corners.find(({ side }) => side === assessed.side);
  return corner ? wheelForceCurve(fitment, corner, assessed) : null;
}
