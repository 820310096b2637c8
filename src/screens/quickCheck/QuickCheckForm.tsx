import { type LimitPlace, layoutRegistry } from "../../physics/readings/index.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import { usualPayloads } from "../../records/entry/payloadWords.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, Platform } from "../../records/pack/pack.ts";
import { platformOf, stopOf } from "../../records/pack/pack.ts";
import type { FoundPart } from "../../records/pack/partCode.ts";
import {
  bodyLift,
  type DoubtedReading,
  groundToArch,
  inchesForMm,
} from "../../records/quickCheck/quickCheckDoubts.ts";
import { uses } from "../check/UseChoice.tsx";
import { PartEntry } from "../choosing/PartEntry.tsx";
import { PlatformField } from "../choosing/PlatformField.tsx";
import { Button } from "../parts/Button.tsx";
import { Choices, Segmented } from "../parts/Choices.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { QuickCheckReading } from "./QuickCheckReading.tsx";
import {
  openOf,
  type QuickCheckDraft,
  type QuickCheckReadingName,
  quickCheckIds,
  readingsSoFar,
  unitOfDraft,
} from "./quickCheckDraft.ts";

function usualOf(reading: { readonly values: readonly number[] } | undefined): number | null {
  if (!reading || reading.values.length === 0) return null;
  return mean(reading.values);
}

/** How this clearance is measured on the platform, and what it usually is. */
function clearanceOn(
  { limits, layout }: Platform,
  kind: "tyre" | "damper",
): { readonly at: LimitPlace; readonly usualMm: number | null } {
  const limit = limits.find((each) => each.kind === kind);
  if (limit) return { at: limit.at, usualMm: usualOf(limit.reading) };
  const onTheRod = kind === "damper" && layoutRegistry[layout.kind].onRod;
  return { at: onTheRod ? "stop" : "wheel", usualMm: null };
}

function doubtText(doubts: readonly DoubtedReading[], id: string, unit: LengthUnit): string | null {
  const doubt = doubts.find(({ reading }) => reading === id);
  return doubt ? sentenceText(doubt.sentence, unit, { coarse: true }) : null;
}

/** The vehicle, the five readings and what it carries, one after another. */
export function QuickCheckForm({
  pack,
  draft,
  unit,
  change,
  onUnknown,
}: {
  pack: Pack;
  draft: QuickCheckDraft;
  unit: LengthUnit;
  change: (part: Partial<QuickCheckDraft>) => void;
  /** To a check that is measured with a tape. */
  onUnknown: () => void;
}) {
  const platform = platformOf(pack, draft.platformId);
  const part = stopOf(pack, draft.part?.stopId ?? null);
  const takePart = ({ stop, batch }: FoundPart) =>
    change({ part: { stopId: stop.id, ...(batch !== undefined && { batch }) } });
  const left = openOf(draft);
  const typed = readingsSoFar(draft);
  const doubts = platform
    ? [
        groundToArch(platform, typed),
        inchesForMm(platform, usualOf(stopOf(pack, platform.usualStop)?.freeHeight), typed),
        bodyLift(platform, typed),
      ].filter((each) => each !== null)
    : [];
  const common = (name: QuickCheckReadingName) => ({
    name,
    side: draft.side,
    clearanceKind: draft.clearanceKind,
    entry: draft.entries[name],
    unit,
    doubted: doubtText(doubts, quickCheckIds[name], unitOfDraft(draft, unit)),
    onEntry: (entry: NonNullable<QuickCheckDraft["entries"][QuickCheckReadingName]>) =>
      change({ entries: { ...draft.entries, [name]: entry } }),
  });
  return (
    <>
      <section class="card">
        <PlatformField
          label="Which vehicle and axle?"
          hint="Its geometry, weights and springs come from the parts library."
          none="Choose"
          platforms={pack.platforms}
          value={draft.platformId}
          onChange={(chosen) => change({ platformId: chosen?.id ?? null })}
        />
        <div class="row">
          <Button icon="forward" onClick={onUnknown}>
            My vehicle isn't here
          </Button>
        </div>
        <p class="small soft">
          Then you measure your own suspension on one side, with a tape. Weights and springs can
          wait: the answer is then about height alone.
        </p>
        <Choices
          legend="Toughest regular use"
          options={uses}
          value={draft.use}
          onChange={(use) => change({ use })}
        />
        <Segmented
          legend="Which side do you measure?"
          value={draft.side}
          onChange={(side) => change({ side })}
          options={[
            { value: "left", name: "Left" },
            { value: "right", name: "Right" },
          ]}
        />
        <p class="small soft">The side that sits lower, or where the stop looks worse.</p>
      </section>
      {platform && (
        <>
          <QuickCheckReading
            {...common("rideHeight")}
            number={1}
            heading="Ride height"
            platform={platform}
            usualMm={usualOf(platform.rideHeight)}
          />
          <QuickCheckReading
            {...common("gap")}
            number={2}
            heading="Gap between stop and pad"
            platform={platform}
            usualMm={usualOf(platform.gap)}
          />
          <QuickCheckReading
            {...common("stopHeight")}
            number={3}
            heading="Height of the stop that is fitted"
            platform={platform}
            usualMm={usualOf((part ?? stopOf(pack, platform.usualStop))?.freeHeight)}
          >
            <Disclosure
              summary={part ? `Which stop: ${part.name}` : "Is there a label or a part number?"}
            >
              <PartEntry pack={pack} onFound={takePart} />
              {part && (
                <div class="row">
                  <Button onClick={() => change({ part: null })}>It is not “{part.name}”</Button>
                </div>
              )}
            </Disclosure>
          </QuickCheckReading>
          <QuickCheckReading
            {...common("clearance")}
            number={4}
            heading={
              draft.clearanceKind === "tyre" ? "Clearance over the tire" : "Rod left on the shock"
            }
            platform={platform}
            clearanceAt={clearanceOn(platform, draft.clearanceKind).at}
            usualMm={clearanceOn(platform, draft.clearanceKind).usualMm}
          >
            <Segmented
              legend="What can you get at?"
              value={draft.clearanceKind}
              onChange={(clearanceKind) => change({ clearanceKind })}
              options={[
                { value: "tyre", name: "Over the tire" },
                { value: "damper", name: "Shock rod" },
              ]}
            />
          </QuickCheckReading>
          <section class="card quick-check-reading" aria-labelledby="quick-check-payload">
            <h2 id="quick-check-payload">
              <span class="quick-check-number">5</span> What does it usually carry?
            </h2>
            <Choices
              legend="Extra load compared with now"
              options={usualPayloads.map(({ word, label }) => ({ value: word, name: label }))}
              value={draft.payload}
              onChange={(payload) => change({ payload })}
            />
          </section>
          <p class="small soft" role="status">
            {left.length === 0
              ? "Everything needed is here. A reading you leave out is taken from the library, with a wide ±. The margin of error is then wider."
              : left[0] === "payload"
                ? "Next: choose what it usually carries."
                : "One reading can't be used yet. See the red words above."}
          </p>
        </>
      )}
    </>
  );
}
