import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { Button } from "../parts/Button.tsx";
import { placeholderClass } from "../parts/placeholder.ts";
import { RowBoundary } from "../parts/RowBoundary.tsx";
import { CheckRow, type RowAct } from "./CheckRow.tsx";
import { foundIn, jobGroups } from "./jobGroups.ts";

/** So few are seen at a glance. */
const searchedFrom = 6;

export interface CheckGroupsProps {
  readonly checks: readonly ListedCheck[];
  /** Where a check stands at the desk, by its id. */
  readonly sent: ReadonlyMap<string, string>;
  /** The check that is open beside the list. */
  readonly open?: string;
  readonly onAct: (act: RowAct, stored: ListedCheck) => void;
  /** In the place of a row that can't be shown. */
  readonly damaged: (stored: ListedCheck) => ComponentChildren;
  /** Rows at the end of the list. */
  readonly children: ComponentChildren;
}

/** The checks on this phone by their jobs, and a search among them. */
export function CheckGroups({ checks, sent, open, onAct, damaged, children }: CheckGroupsProps) {
  const [words, setWords] = useState("");
  const found = foundIn(checks, words);
  const row = (stored: ListedCheck) => (
    <RowBoundary key={stored.id} instead={damaged(stored)}>
      <CheckRow
        stored={stored}
        sent={sent.get(stored.id)}
        current={stored.id === open}
        onAct={(act) => onAct(act, stored)}
      />
    </RowBoundary>
  );
  return (
    <>
      {checks.length >= searchedFrom && (
        <input
          type="search"
          class={`check-search ${placeholderClass(messages.vehicleJobCustomerDate)}`}
          placeholder={messages.vehicleJobCustomerDate}
          aria-label={messages.findCheck}
          value={words}
          onInput={(event) => setWords(event.currentTarget.value)}
        />
      )}
      {words.trim() !== "" && (
        <p class="small soft" role="status">
          {found.length === 0
            ? messages.noCheckHasAll
            : messages.ofWord({ found: found.length, checks: checks.length })}
        </p>
      )}
      <ul class="check-list">
        {jobGroups(found).map(({ job, checks: [first, ...others] }) =>
          !first ? null : job ? (
            <li key={job.id} class="check-job">
              <div class="check-job-head">
                <h2>
                  <bdi>{job.label || messages.job}</bdi>
                  {(job.number || job.customer) && (
                    <small>
                      {job.number && messages.job2({ number: job.number })}
                      {job.number && job.customer && " · "}
                      {job.customer && <bdi>{job.customer}</bdi>}
                    </small>
                  )}
                </h2>
                <Button
                  look="quiet"
                  icon="pencil"
                  label={messages.changeJob({ label: job.label })}
                  onClick={() => onAct("job", first)}
                />
              </div>
              <ul class="check-list">{[first, ...others].map(row)}</ul>
            </li>
          ) : (
            row(first)
          ),
        )}
        {children}
      </ul>
    </>
  );
}
