import * as messages from "../../words/compiled/screens/desk.ts";
import "../job/job.css";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { DeskCheck } from "../../records/review/decision.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { jobWords } from "../job/jobWords.ts";
import { deskCheckHref } from "./deskRoutes.ts";
import { ageWords } from "./words.ts";

/** The other checks of this check's job that came in, each a tap away. */
export function JobChecks({
  record: { id, job },
  checks,
}: {
  record: CheckRecord;
  checks: readonly DeskCheck[];
}) {
  if (!job) return null;
  const others = checks.filter(({ latest }) => latest.jobId === job.id && latest.checkId !== id);
  return (
    <nav class="stack-close" aria-label={messages.checksOfThisJob}>
      <p>
        <strong>
          <bdi>{jobWords(job)}</bdi>
        </strong>
        {job.moment && messages.change({ moment: job.moment })}
      </p>
      {others.length > 0 && (
        <ul class="job-others">
          {others.map(({ latest }) => (
            <li key={latest.checkId}>
              <a href={deskCheckHref(latest.key)}>
                {latest.computed && (
                  <StateMark state={latest.computed.verdict} size={24} label="" />
                )}
                <span>
                  {messages.axleOfJob({ axle: latest.axle, verdict: latest.computed?.verdict })}
                  <small>
                    <bdi>{latest.vehicle}</bdi> · <bdi>{latest.stop}</bdi> ·{" "}
                    {ageWords(latest.receivedAt)}
                  </small>
                </span>
              </a>
            </li>
          ))}
        </ul>
      )}
    </nav>
  );
}
