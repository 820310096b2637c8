import { capital } from "../../../physics/sentence.ts";
import { catalogueEntry } from "../../../records/entry/readingCatalogue.ts";
import type { DecidingReading, PlatformVerdicts } from "../../../records/findings/verdicts.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { verdictShort } from "../words.ts";
import { Bar } from "./Bar.tsx";
import { checkWords, percent } from "./findingsWords.ts";

const verdictOrder = ["ok", "care", "unsure", "no"] as const;
const missable = ["clearance", "earlyContact", "stiffness", "balance", "plausible"] as const;

/** Verdicts and missed limits by platform. */
export function VerdictsTable({ rows }: { rows: readonly PlatformVerdicts[] }) {
  return (
    <section class="card" aria-labelledby="verdicts-heading">
      <h2 id="verdicts-heading">Verdicts and missed limits, by vehicle</h2>
      {rows.length === 0 ? (
        <p>Nothing is computed yet.</p>
      ) : (
        <div class="desk-table-box">
          <table class="desk-readings finding-table">
            <thead>
              <tr>
                <th scope="col">Vehicle</th>
                <th scope="col">Checks</th>
                {verdictOrder.map((verdict) => (
                  <th key={verdict} scope="col">
                    <StateMark state={verdict} size={18} label="" /> {verdictShort[verdict]}
                  </th>
                ))}
                {missable.map((check) => (
                  <th key={check} scope="col">
                    <span class="unseen">Missed: </span>
                    {checkWords[check]}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map(({ platformId, label, count, verdicts, missed }) => (
                <tr key={platformId ?? ""}>
                  <th scope="row">
                    <bdi>{label}</bdi>
                  </th>
                  <td>{count}</td>
                  {verdictOrder.map((verdict) => (
                    <td key={verdict}>{verdicts[verdict]}</td>
                  ))}
                  {missable.map((check) => (
                    <td key={check}>
                      <Bar
                        share={(missed[check] ?? 0) / count}
                        words={percent((missed[check] ?? 0) / count)}
                      />
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

/** Which reading decides most often where a check does not simply fit. */
export function DecidingTable({ rows }: { rows: readonly DecidingReading[] }) {
  return (
    <section class="card" aria-labelledby="deciding-heading">
      <h2 id="deciding-heading">Which reading decides</h2>
      <p class="small soft">
        Of the checks that don't simply fit: the reading that the worst finding points to.
      </p>
      {rows.length === 0 ? (
        <p>None so far.</p>
      ) : (
        <div class="desk-table-box">
          <table class="desk-readings finding-table">
            <thead>
              <tr>
                <th scope="col">Reading</th>
                <th scope="col">Checks</th>
                <th scope="col">Share</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ reading, example, count, share }) => (
                <tr key={reading}>
                  <th scope="row">{capital(catalogueEntry(example).name)}</th>
                  <td>{count}</td>
                  <td>
                    <Bar share={share} words={percent(share)} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
