import { checkIds, states } from "../../../physics/choices.ts";
import { capital } from "../../../physics/sentence.ts";
import { catalogueEntry } from "../../../records/entry/readingCatalogue.ts";
import type { DecidingReading, PlatformVerdicts } from "../../../records/findings/verdicts.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/desk/findings.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { DeskTable } from "../DeskTable.tsx";
import { verdictShort } from "../words.ts";
import { Bar } from "./Bar.tsx";
import { checkWords, percent } from "./findingsWords.ts";

function Share({ share }: { share: number }) {
  return <Bar share={share} words={percent(share)} />;
}

/** Verdicts and missed limits by platform. */
export function VerdictsTable({ rows }: { rows: readonly PlatformVerdicts[] }) {
  return (
    <section class="card" aria-labelledby="verdicts-heading">
      <h2 id="verdicts-heading">{messages.verdictsAndMissedLimits}</h2>
      {rows.length === 0 ? (
        <p>{messages.nothingIsComputedYet}</p>
      ) : (
        <DeskTable
          caption={messages.checksByVehicle}
          columns={[
            messages.vehicle,
            messages.checks,
            ...states.map((verdict) => ({
              name: verdictShort[verdict],
              heading: (
                <>
                  <StateMark state={verdict} size={18} label="" /> {verdictShort[verdict]}
                </>
              ),
            })),
            ...checkIds.map((check) => ({
              name: messages.missed({ check }),
              heading: (
                <>
                  <span class="unseen">{messages.missed2} </span>
                  {checkWords[check]}
                </>
              ),
            })),
          ]}
          rows={rows.map(({ platformId, label, count, verdicts, missed }) => ({
            key: platformId ?? "",
            cells: [
              <bdi key="label">{said(label)}</bdi>,
              count,
              ...states.map((verdict) => verdicts[verdict]),
              ...checkIds.map((check) => (
                <Share key={check} share={(missed[check] ?? 0) / count} />
              )),
            ],
          }))}
        />
      )}
    </section>
  );
}

/** Which reading decides most often where a check does not simply fit. */
export function DecidingTable({ rows }: { rows: readonly DecidingReading[] }) {
  return (
    <section class="card" aria-labelledby="deciding-heading">
      <h2 id="deciding-heading">{messages.whichReadingDecides}</h2>
      <p class="small soft">{messages.ofChecksThatDont}</p>
      {rows.length === 0 ? (
        <p>{messages.noneSoFar}</p>
      ) : (
        <DeskTable
          caption={messages.readingsThatDecide}
          columns={[messages.reading, messages.checks, messages.share]}
          rows={rows.map(({ reading, example, count, share }) => ({
            key: reading,
            cells: [
              capital(said(catalogueEntry(example).name)),
              count,
              <Share key="share" share={share} />,
            ],
          }))}
        />
      )}
    </section>
  );
}
