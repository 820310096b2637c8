import { useState } from "preact/hooks";
import type { Outcome } from "../../physics/outcome.ts";
import type { Job } from "../../records/check/checkRecord.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { newId } from "../../records/check/storedCheck.ts";
import { factsOfJob, jobOf, withJob } from "../../records/filling/job.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { keepJobAlike } from "../../storage/jobs.ts";
import * as messages from "../../words/compiled/screens/job.ts";
import { Button } from "../parts/Button.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { SelectField } from "../parts/Field.tsx";
import { JobFields } from "./JobFields.tsx";
import { jobWords } from "./jobWords.ts";

interface JobDialogProps {
  readonly store: CheckStore;
  readonly stored: ListedCheck;
  /** Every check on this phone. */
  readonly checks: readonly ListedCheck[];
  readonly onLeave: () => void;
  readonly onDone: (kept: Outcome<unknown>) => void;
}

/** Which job a check belongs to, what that job is called, and on which side of the change it is. */
export function JobDialog({ store, stored, checks, onLeave, onDone }: JobDialogProps) {
  const [job, setJob] = useState<Job>(() => jobOf(stored, inModelUnits));
  const jobs = jobsOf(checks);
  const isKnown = jobs.some(({ id }) => id === job.id);
  const sharing = checks.filter(({ record }) => record.job?.id === job.id).length;
  const moment = job.moment ?? "none";

  const choose = (id: string) => {
    const known = jobs.find((each) => each.id === id) ?? { id: newId(), label: job.label };
    setJob({ ...factsOfJob(known), ...(job.moment && { moment: job.moment }) });
  };
  const save = async () => {
    const named: Job = { ...factsOfJob(job), ...(job.moment && { moment: job.moment }) };
    const kept = await store.update(stored.id, (current) => withJob(current, named));
    onDone(kept.ok ? await keepJobAlike(store, named) : kept);
  };
  const takeOut = async () => {
    onDone(await store.update(stored.id, (current) => withJob(current, undefined)));
  };
  return (
    <Dialog
      heading={messages.job}
      onLeave={onLeave}
      actions={
        <>
          <Button onClick={onLeave}>{messages.cancel}</Button>
          <Button look="main" onClick={save} disabled={job.label.trim() === ""}>
            {messages.save}
          </Button>
        </>
      }
    >
      {jobs.length > 0 && (
        <SelectField
          label={messages.thisCheckBelongsTo}
          value={isKnown ? job.id : ""}
          options={[
            { value: "", text: messages.newJob },
            ...jobs.map((each) => ({ value: each.id, text: jobWords(each) })),
          ]}
          onChange={choose}
        />
      )}
      <JobFields job={job} onChange={setJob} />
      <Segmented
        legend={messages.beforeOrAfterChange}
        value={moment}
        onChange={(value) => {
          const { moment: _, ...facts } = job;
          setJob(value === "none" ? facts : { ...facts, moment: value });
        }}
        options={[
          { value: "before", name: messages.before },
          { value: "after", name: messages.after },
          { value: "none", name: messages.neither },
        ]}
      />
      {sharing > 1 && <p class="small soft">{messages.nameNumberAndCustomer({ sharing })}</p>}
      {stored.record.job && <Button onClick={takeOut}>{messages.takeThisCheckOut}</Button>}
    </Dialog>
  );
}

/** Every job of the checks, once each; that of the newest check first. */
function jobsOf(checks: readonly ListedCheck[]): readonly Job[] {
  const found = new Map<string, Job>();
  for (const { record } of checks) {
    if (record.job && !found.has(record.job.id)) found.set(record.job.id, record.job);
  }
  return [...found.values()];
}
