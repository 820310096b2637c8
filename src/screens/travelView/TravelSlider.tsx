import { useId, useMemo } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import * as messages from "../../words/compiled/screens/travelView.ts";
import { nearMark, nextMark, type TravelSpan } from "./travelMarks.ts";
import { placeWords } from "./travelWords.ts";

/** Moves the wheel by thumb or keys; it rests at the places that have a name. */
export function TravelSlider({
  span,
  travelMm,
  saidMm,
  onTravel,
  unit,
}: {
  readonly span: TravelSpan;
  readonly travelMm: number;
  /** Where it is said to be: of a wheel that moves, not every place. */
  readonly saidMm: number;
  readonly onTravel: (travelMm: number) => void;
  readonly unit: LengthUnit;
}) {
  const id = useId();
  const { from, to, marks } = span;
  const share = (travel: number) => (100 * (travel - from)) / (to - from);
  const within = (travel: number) => Math.min(Math.max(travel, from), to);
  const held = within(travelMm);
  const keyed = (key: string): number | null => {
    const step = (to - from) / 100;
    switch (key) {
      case "ArrowRight":
      case "ArrowUp":
        return Math.min(held + step, to);
      case "ArrowLeft":
      case "ArrowDown":
        return Math.max(held - step, from);
      case "PageUp":
        return nextMark(span, held, 1);
      case "PageDown":
        return nextMark(span, held, -1);
      case "Home":
        return from;
      case "End":
        return to;
      default:
        return null;
    }
  };
  const place = useMemo(() => placeWords(span, within(saidMm), unit), [span, saidMm, unit]);
  const ticks = useMemo(
    () => (
      <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
        <line x1="0" x2="100" y1="5" y2="5" />
        {marks.map(({ id: mark, travelMm: at }) => (
          <line key={mark} class="travel-tick" x1={share(at)} x2={share(at)} y1="0" y2="10" />
        ))}
      </svg>
    ),
    [span],
  );
  const here = marks.find(({ travelMm: at }) => Math.abs(at - travelMm) < 0.05)?.id;
  const places = useMemo(
    () => (
      <div class="travel-marks">
        {marks.map(({ id: mark, words, travelMm: at }) => (
          <button
            key={mark}
            type="button"
            class={`travel-mark travel-mark-${mark}`}
            aria-pressed={mark === here}
            onClick={() => onTravel(at)}
          >
            {words}
          </button>
        ))}
      </div>
    ),
    [span, here, onTravel],
  );
  return (
    <div class="travel-slider">
      <label for={id}>{messages.moveWheelUp}</label>
      <div class="travel-track">
        {ticks}
        <input
          id={id}
          type="range"
          min={from}
          max={to}
          step="any"
          value={held}
          aria-valuetext={place}
          onInput={(event) => {
            const wanted = Number(event.currentTarget.value);
            onTravel(nearMark(span, wanted)?.travelMm ?? wanted);
          }}
          onKeyDown={(event) => {
            const next = keyed(event.key);
            if (next === null) return;
            event.preventDefault();
            onTravel(next);
          }}
        />
      </div>
      {places}
    </div>
  );
}
