import { useEffect, useMemo } from "preact/hooks";
import {
  changeFullTravel,
  type FullTravelRecord,
  fullTravelTicksId,
  noFullTravel,
  withFullTravelEntries,
} from "../../records/check/fullTravel.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { chosen, withChoice } from "../../records/filling/choice.ts";
import { hasBeamAxle } from "../../records/filling/layoutChoices.ts";
import type { KeepState } from "../../storage/keeper.ts";
import * as messages from "../../words/compiled/screens/fullTravel.ts";
import { answerHref, stepHref } from "../addresses.ts";
import { CheckHead } from "../check/CheckHead.tsx";
import { NotSaved, SavedLine } from "../check/SavedLine.tsx";
import { CautionPicture } from "../drawings/CautionPicture.tsx";
import type { Change } from "../guide/stepProps.ts";
import { fullTravelStep } from "../guide/steps.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { CheckLine, Choices, Segmented } from "../parts/Choices.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import type { Preferences } from "../preferences.ts";
import { Comparison } from "./Comparison.tsx";
import { ContactsCard } from "./ContactsCard.tsx";
import {
  cannotCheck,
  type FullTravelCaution,
  fullTravelCautions,
  measuringSteps,
  type SpringSort,
  springSorts,
} from "./fullTravelWords.ts";
import "./fullTravel.css";
import { completeRecord } from "../../records/check/completeRecord.ts";

export interface FullTravelScreenProps {
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
  readonly kept: KeepState;
  readonly tryAgain: () => void;
  /** To a step of this check. */
  readonly go: (step: string) => void;
}

/** As chosen; a check that was ticked here before this was asked had its spring taken out. */
function springOf(stored: StoredCheck): SpringSort | null {
  return chosen(stored, "fullTravel.spring") ?? (ticksOf(stored).length === 0 ? null : "coil");
}

/** What was ticked on this phone; what the record says may be another person's word. */
function ticksOf(stored: StoredCheck): readonly string[] {
  return stored.entries[fullTravelTicksId]?.texts ?? [];
}

/** Another spring has other cautions: what was acknowledged for one does not hold for it. */
function withSpring(stored: StoredCheck, spring: SpringSort): StoredCheck {
  return changeFullTravel(withChoice(stored, "fullTravel.spring", spring), (record) => ({
    ...record,
    acknowledged: null,
  }));
}

function withTick(
  stored: StoredCheck,
  id: string,
  ticked: boolean,
  cautions: readonly FullTravelCaution[],
): StoredCheck {
  const others = ticksOf(stored).filter((each) => each !== id);
  const texts = ticked ? [...others, id] : others;
  const whole = cautions.every((caution) => texts.includes(caution.id));
  const entries = { ...stored.entries, [fullTravelTicksId]: { texts, unit: "", tol: "" } as const };
  return changeFullTravel({ ...stored, entries }, (record) => ({
    ...record,
    acknowledged: whole ? new Date().toISOString() : null,
  }));
}

/** The whole travel by hand: what touches where, beside what was computed. */
export default function FullTravelScreen({
  stored,
  change,
  preferences,
  kept,
  tryAgain,
  go,
}: FullTravelScreenProps) {
  const heading = useHeadingFocus(fullTravelStep);
  const found = stored.record.fullTravel ?? noFullTravel;
  const complete = useMemo(() => completeRecord(stored), [stored.record, stored.entries]);
  useEffect(() => {
    change((current) => withFullTravelEntries(current, preferences.length));
  }, [change, preferences.length]);
  const spring = springOf(stored);
  const beamAxle = hasBeamAxle(stored);
  const cautions = spring === null ? [] : fullTravelCautions(spring, beamAxle);
  const ticked = ticksOf(stored);
  const open = cautions.filter(({ id }) => !ticked.includes(id)).length;
  const begun = spring !== null && open === 0;
  const put = (update: (record: FullTravelRecord) => FullTravelRecord) =>
    change((current) => changeFullTravel(current, update));
  return (
    <Screen
      wide
      top={
        <CheckHead stored={stored} isComplete={complete.ok}>
          <SavedLine kept={kept} />
        </CheckHead>
      }
      actions={
        <ButtonLink
          look="main"
          href={complete.ok ? answerHref(stored.id) : stepHref(stored.id, "finish")}
        >
          {complete.ok ? messages.toAnswer : messages.backToCheck}
        </ButtonLink>
      }
    >
      <NotSaved kept={kept} stored={stored} tryAgain={tryAgain} />
      <h1 ref={heading} tabIndex={-1}>
        {messages.fullTravelCheck2}
      </h1>
      <div class="full-travel-lead">
        <p>{messages.axle({ isBeamAxle: Boolean(beamAxle) })}</p>
        <span class="full-travel-picture" aria-hidden="true">
          <CautionPicture caution="travel" />
        </span>
      </div>
      <section class="stack-close" aria-labelledby="full-travel-cautions">
        <h2 id="full-travel-cautions">{messages.first}</h2>
        <Choices
          legend={messages.whatCarriesVehicleHere}
          value={spring}
          onChange={(sort) => change((current) => withSpring(current, sort))}
          options={springSorts}
        />
        <div class="choices">
          {cautions.map(({ id, words }) => (
            <CheckLine
              key={id}
              checked={ticked.includes(id)}
              onChange={(checked) => change((current) => withTick(current, id, checked, cautions))}
            >
              {words}
            </CheckLine>
          ))}
        </div>
        <p class="small soft" role="status">
          {begun
            ? messages.allAcknowledged
            : spring === null
              ? messages.chooseSpringFirstWhat
              : messages.ofStillToTick({ open, cautions: cautions.length })}
        </p>
      </section>
      {begun && (
        <>
          <section class="stack" aria-labelledby="full-travel-how">
            <h2 id="full-travel-how">{messages.howItIsMeasured}</h2>
            <ol class="numbered">
              {measuringSteps(spring).map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ol>
            <Segmented
              legend={messages.whatTapeReads}
              value={found.measure}
              onChange={(measure) => put((record) => ({ ...record, measure }))}
              options={[
                { value: "wheelTravel", name: messages.travelFromRide },
                { value: "hubToArch", name: messages.hubToFender },
              ]}
            />
            {beamAxle && (
              <Segmented
                legend={messages.whichWheelsGoUp}
                value={found.movement}
                onChange={(movement) => put((record) => ({ ...record, movement }))}
                options={[
                  { value: "both", name: messages.bothTogether },
                  { value: "one", name: messages.oneOtherDown },
                ]}
              />
            )}
          </section>
          <div class="full-travel-sides">
            {stored.record.corners.map(({ side }) => (
              <ContactsCard
                key={side}
                side={side}
                found={found}
                stored={stored}
                change={change}
                preferences={preferences}
              />
            ))}
          </div>
          <Comparison
            complete={complete}
            found={found}
            change={change}
            unit={preferences.length}
            go={go}
          />
        </>
      )}
      <Disclosure summary={messages.whatItCantCheck}>
        <ul class="full-travel-limits">
          {cannotCheck.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </Disclosure>
    </Screen>
  );
}
