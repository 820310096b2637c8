import { useMemo } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type {
  Assessment,
  Corner,
  CornerAssessment,
  Fitment,
  Reading,
  Side,
} from "../../../physics/fitment.ts";
import { meanOf } from "../../../physics/uncertainty/index.ts";
import { completeRecord } from "../../../records/check/completeRecord.ts";
import { fitmentOf } from "../../../records/check/fitmentOf.ts";
import type { ListedCheck } from "../../../records/check/listedCheck.ts";
import { sourceWords } from "../../../records/entry/readingSource.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { stopTitle } from "../../../records/pack/stopTitle.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { sentenceText, withoutRanges } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/compare.ts";
import { stepHref } from "../../addresses.ts";
import { sideWords, verdictWords } from "../../assessment/stateWords.ts";
import { useAssessment } from "../../assessment/useAssessment.ts";
import { DataTable } from "../../charts/DataTable.tsx";
import { StateMark } from "../../drawings/StateMark.tsx";
import { Notice } from "../../parts/Notice.tsx";

interface Answered {
  readonly fitment: Fitment;
  readonly assessment: Assessment;
}

/** The same axle before and after the change, each answered from its own readings. */
export function BeforeAfter({
  isBefore,
  counterpart,
  assessor,
  fitment,
  assessment,
  unit,
}: {
  /** This check is the one before the change. */
  isBefore: boolean;
  counterpart: ListedCheck;
  assessor: Assessor;
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
}) {
  const theirs = useMemo(() => {
    const { photos: _, ...record } = counterpart.record;
    const completion = completeRecord({ ...counterpart, record });
    return completion.ok ? fitmentOf(completion.value) : null;
  }, [counterpart]);
  const assessed = useAssessment(assessor, theirs, "counterpart", true);
  if (theirs === null) {
    return (
      <p>
        {messages.checkAfter({ isBefore })}{" "}
        <a href={stepHref(counterpart.id)}>{messages.goOnWithIt}</a>
      </p>
    );
  }
  if (assessed.state === "fault") {
    return (
      <Notice tone="unsure">
        <p>{sentenceText(assessed.fault.sentence, unit)}</p>
      </Notice>
    );
  }
  if (assessed.state !== "complete") return <p class="soft">{messages.workingOutOtherCheck}</p>;
  const mine: Answered = { fitment, assessment };
  const other: Answered = { fitment: assessed.fitment, assessment: assessed.assessment };
  const [before, after] = isBefore ? [mine, other] : [other, mine];
  const sides = before.assessment.corners
    .map(({ side }) => side)
    .filter((side) => after.assessment.corners.some((corner) => corner.side === side));
  return (
    <>
      <div class="compared">
        {(
          [
            [messages.before, before],
            [messages.after, after],
          ] as const
        ).map(([name, { fitment: own, assessment: answer }]) => (
          <section key={name} class={`compared-one verdict-${answer.verdict}`}>
            <h3>
              <small>{name}</small> {said(stopTitle(own.stop))}
            </h3>
            <p class="check-state">
              <StateMark state={answer.verdict} size={28} label="" />
              <strong class={`tone-${answer.verdict}`}>{verdictWords[answer.verdict]}</strong>
            </p>
            <p class="check-sentence">
              {sentenceText(withoutRanges(answer.reason), unit, { coarse: true })}
            </p>
          </section>
        ))}
      </div>
      <div class="before-after">
        {sides.map((side) => (
          <DataTable
            key={side}
            caption={messages.beforeAndAfter({ side: sideWords[side] })}
            columns={[
              { name: messages.figure },
              { name: messages.before },
              { name: messages.after },
            ]}
            rows={rowsOf(side, before, after, unit)}
          />
        ))}
      </div>
    </>
  );
}

const absent = "–";

function rowsOf(
  side: Side,
  before: Answered,
  after: Answered,
  unit: LengthUnit,
): readonly (readonly string[])[] {
  const length = (value: number | null | undefined) =>
    value === null || value === undefined ? absent : quantityText({ kind: "length", value }, unit);
  const figures: readonly [string, (corner: CornerAssessment, measured: Corner) => string][] = [
    [messages.stopToPad, (_, measured) => standText(measured, unit)],
    [messages.wheelTravelToContact, ({ wheelTravelToContactMm }) => length(wheelTravelToContactMm)],
    [messages.toFullyCompressed, ({ wheelTravelToFullStopMm }) => length(wheelTravelToFullStopMm)],
    [messages.toHardContact, ({ wheelTravelToHardLimitMm }) => length(wheelTravelToHardLimitMm)],
    [messages.roomBeforeHardContact, ({ reserveMm }) => length(reserveMm)],
    [
      messages.contactsLoaded,
      ({ loadedContactsPerKm }) =>
        loadedContactsPerKm === null
          ? absent
          : quantityText({ kind: "contactRate", value: loadedContactsPerKm }, unit),
    ],
    [
      messages.hardestHitOnBody,
      ({ events }) =>
        events === null || events.length === 0
          ? absent
          : quantityText(
              {
                kind: "acceleration",
                value: Math.max(...events.map(({ peakAccelerationG }) => peakAccelerationG)),
              },
              unit,
            ),
    ],
  ];
  const at = ({ fitment, assessment }: Answered) =>
    [
      assessment.corners.find((corner) => corner.side === side),
      fitment.corners.find((corner) => corner.side === side),
    ] as const;
  const [[assessedBefore, cornerBefore], [assessedAfter, cornerAfter]] = [at(before), at(after)];
  if (!assessedBefore || !cornerBefore || !assessedAfter || !cornerAfter) return [];
  return figures.map(([name, figure]) => [
    name,
    figure(assessedBefore, cornerBefore),
    figure(assessedAfter, cornerAfter),
  ]);
}

/** How the stop stands, as it was read: a gap, pressed, or missing. */
function standText({ gap, pressedHeight, seatToPad }: Corner, unit: LengthUnit): string {
  const read = (reading: Reading, after = "") => {
    const from = reading.source === "pack" ? `, ${said(sourceWords.pack)}` : "";
    return quantityText({ kind: "length", value: meanOf(reading) }, unit) + after + from;
  };
  if (gap) return messages.gap({ read: read(gap) });
  if (pressedHeight) return messages.pressedTo({ read: read(pressedHeight) });
  return seatToPad ? messages.noStop({ read: read(seatToPad, messages.toPad) }) : absent;
}
