import type { Side } from "../../../physics/fitment.ts";
import { withCorner, withField } from "../../../records/entryPath.ts";
import { sentenceText } from "../../../records/quantityText.ts";
import { changeRecord, type StoredCheck, setEntry } from "../../../records/storedCheck.ts";
import { drawingValues } from "../../drawings/drawingValues.ts";
import { ReadingDrawing } from "../../drawings/ReadingDrawing.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { chosen, withChoice } from "../choice.ts";
import { packCornerMass } from "../platforms.ts";
import { ReadingEntry } from "../reading/ReadingEntry.tsx";
import { readingGuide } from "../readingGuide.ts";
import { useRevealed } from "../revealed.ts";
import type { StepProps } from "../stepProps.ts";
import { sidesOf, wayOf } from "../steps.ts";
import { helperInputs } from "./helpers.ts";
import { packOption } from "./RideWays.tsx";
import { TolerancedEntry } from "./TolerancedEntry.tsx";

type MassWay = "scale" | "axle" | "pack" | "unknown";

export function massWay(stored: StoredCheck, side: Side): MassWay | null {
  const way = chosen(stored, wayOf(`${side}.cornerMassKg`));
  if (way === "scale" || way === "axle" || way === "pack" || way === "unknown") {
    return way;
  }
  return stored.record.corners.find((corner) => corner.side === side)?.cornerMassKg
    ? "scale"
    : null;
}

function withOneWay(stored: StoredCheck, side: Side, way: MassWay): StoredCheck {
  const id = `${side}.cornerMassKg`;
  const aside = `aside.${id}`;
  const before = massWay(stored, side);
  const entry = stored.entries[id];
  let changed = withChoice(stored, wayOf(id), way);
  if (before === way) return changed;
  if (before === "scale" && entry) {
    changed = { ...changed, entries: { ...changed.entries, [aside]: entry } };
  }
  const { [id]: _, ...others } = changed.entries;
  changed = changeRecord({ ...changed, entries: others }, (record) =>
    withCorner(record, side, (corner) => withField(corner, "cornerMassKg", undefined)),
  );
  const scaled = changed.entries[aside];
  return way === "scale" && scaled ? setEntry(changed, id, scaled) : changed;
}

/** The check with this way to the weight. What is not of one wheel alone stands for both, where the other has none yet. */
export function withMassWay(stored: StoredCheck, side: Side, way: MassWay): StoredCheck {
  const changed = withOneWay(stored, side, way);
  if (way !== "axle" && way !== "pack") return changed;
  return sidesOf(changed).reduce(
    (current, other) =>
      massWay(current, other) === null ? withOneWay(current, other, way) : current,
    changed,
  );
}

export function CornerMassStep({ stored, change, step, preferences, next }: StepProps) {
  const side: Side = step.id.startsWith("right") ? "right" : "left";
  const way = massWay(stored, side);
  const { record } = stored;
  const opened = useRevealed(way);
  const pack = packCornerMass(stored);
  const massUnit = preferences.mass === "lb" ? "in" : "mm";
  const guide = readingGuide(step.id, record.layout?.kind ?? "arm");
  return (
    <>
      <Choices<MassWay>
        legend={`How do you know the weight on the ${side} wheel?`}
        value={way}
        onChange={(value) => change((current) => withMassWay(current, side, value))}
        options={[
          { value: "scale", name: "Wheel scale", hint: "This wheel by itself." },
          {
            value: "axle",
            name: "Half of the axle's weight",
            hint: "From a weighbridge: both wheels of this axle on the plate.",
          },
          ...(pack
            ? [{ value: "pack" as const, name: packOption.name, hint: packOption.hint }]
            : []),
          { value: "unknown", name: "Not known" },
        ]}
      />
      <div ref={opened} class="stack">
        {way === "scale" && (
          <>
            <p>{guide.how}</p>
            <ReadingDrawing
              layoutKind={record.layout?.kind ?? "arm"}
              reading="cornerMass"
              values={drawingValues(record, side)}
              side={side}
              axle={record.axle}
              unit={preferences.mass === "lb" ? "in" : "mm"}
            />
            <ReadingEntry
              id={step.id}
              stored={stored}
              change={change}
              preferences={preferences}
              onEnter={next}
            />
            <p class="small">
              <strong>What goes wrong:</strong> {guide.wrong}
            </p>
          </>
        )}
        {way === "axle" && (
          <>
            <TolerancedEntry
              input={helperInputs.axleMass}
              stored={stored}
              change={change}
              preferences={preferences}
              label="Weight of this axle"
              hint="As the vehicle stands now, driver out."
              usual="2 %"
            />
            <Notice tone="care">
              <p>
                Half of it counts for each wheel, with ± 5 % for what left and right differ by
                (common practice). Tank, battery and driver make one side heavier; a wheel scale
                says how much.
              </p>
            </Notice>
          </>
        )}
        {way === "pack" && pack && (
          <Notice tone="care">
            <p>
              <strong>
                {sentenceText([{ kind: "mass", value: pack.values[0] ?? 0 }], massUnit)} ±{" "}
                {sentenceText([{ kind: "mass", value: pack.tol }], massUnit)}
              </strong>
              , usual for this vehicle by the reference pack. Bodies, tanks and racks differ: a
              weighbridge ticket is better.
            </p>
          </Notice>
        )}
        {way === "unknown" && (
          <Notice tone="unsure" live>
            <p>
              Then the answer can't say how often the wheel reaches the stop, how hard, nor which
              stiffness works. A weighbridge ticket for this axle is enough to find out.
            </p>
          </Notice>
        )}
      </div>
    </>
  );
}
