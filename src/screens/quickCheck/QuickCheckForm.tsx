import { type LimitPlace, layoutRegistry } from "../../physics/readings/index.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import { usualPayloads } from "../../records/entry/payloadWords.ts";
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
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/quickCheck.ts";
import { uses } from "../check/UseChoice.tsx";
import { PartEntry } from "../choosing/PartEntry.tsx";
import { PlatformField } from "../choosing/PlatformField.tsx";
import { filled } from "../filled.ts";
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
          label={messages.whichVehicleAndAxle}
          hint={messages.itsGeometryWeightsAnd}
          none={messages.choose}
          platforms={pack.platforms}
          value={draft.platformId}
          onChange={(chosen) => change({ platformId: chosen?.id ?? null })}
        />
        <div class="row">
          <Button icon="forward" onClick={onUnknown}>
            {messages.myVehicleIsntHere}
          </Button>
        </div>
        <p class="small soft">{messages.thenYouMeasureYour}</p>
        <Choices
          legend={messages.toughestRegularUse}
          options={uses}
          value={draft.use}
          onChange={(use) => change({ use })}
        />
        <Segmented
          legend={messages.whichSideDoYou}
          value={draft.side}
          onChange={(side) => change({ side })}
          options={[
            { value: "left", name: messages.left },
            { value: "right", name: messages.right },
          ]}
        />
        <p class="small soft">{messages.sideThatSitsLower}</p>
      </section>
      {platform && (
        <>
          <QuickCheckReading
            {...common("rideHeight")}
            number={1}
            heading={messages.rideHeight2}
            platform={platform}
            usualMm={usualOf(platform.rideHeight)}
          />
          <QuickCheckReading
            {...common("gap")}
            number={2}
            heading={messages.gapBetweenStopAnd}
            platform={platform}
            usualMm={usualOf(platform.gap)}
          />
          <QuickCheckReading
            {...common("stopHeight")}
            number={3}
            heading={messages.heightOfStopThat}
            platform={platform}
            usualMm={usualOf((part ?? stopOf(pack, platform.usualStop))?.freeHeight)}
          >
            <Disclosure
              summary={part ? messages.whichStop({ name: part.name }) : messages.isThereLabelOr}
            >
              <PartEntry pack={pack} onFound={takePart} />
              {part && (
                <div class="row">
                  <Button onClick={() => change({ part: null })}>
                    {messages.itIsNot({ name: part.name })}
                  </Button>
                </div>
              )}
            </Disclosure>
          </QuickCheckReading>
          <QuickCheckReading
            {...common("clearance")}
            number={4}
            heading={
              draft.clearanceKind === "tyre" ? messages.clearanceOverTire : messages.rodLeftOnShock
            }
            platform={platform}
            clearanceAt={clearanceOn(platform, draft.clearanceKind).at}
            usualMm={clearanceOn(platform, draft.clearanceKind).usualMm}
          >
            <Segmented
              legend={messages.whatCanYouGet}
              value={draft.clearanceKind}
              onChange={(clearanceKind) => change({ clearanceKind })}
              options={[
                { value: "tyre", name: messages.overTire },
                { value: "damper", name: messages.shockRod },
              ]}
            />
          </QuickCheckReading>
          <section class="card quick-check-reading" aria-labelledby="quick-check-payload">
            <h2 id="quick-check-payload">
              {filled(messages.whatDoesItUsually, {
                span: <span class="quick-check-number">5</span>,
              })}
            </h2>
            <Choices
              legend={messages.extraLoadComparedWith}
              options={usualPayloads.map(({ word, label }) => ({ value: word, name: said(label) }))}
              value={draft.payload}
              onChange={(payload) => change({ payload })}
            />
          </section>
          <p class="small soft" role="status">
            {left.length === 0
              ? messages.everythingNeededIsHere
              : left[0] === "payload"
                ? messages.nextChooseWhatIt
                : messages.oneReadingCantBe}
          </p>
        </>
      )}
    </>
  );
}
