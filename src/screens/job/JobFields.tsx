import type { Job } from "../../records/check/checkRecord.ts";
import { recordBounds } from "../../records/check/recordFormat.ts";
import { TextField } from "../parts/Field.tsx";

/** What a job is called, as it is typed; an emptied field is left out. */
export function JobFields({ job, onChange }: { job: Job; onChange: (job: Job) => void }) {
  const { number: _number, ...withoutNumber } = job;
  const { customer: _customer, ...withoutCustomer } = job;
  return (
    <>
      <TextField
        label="Job number"
        value={job.number ?? ""}
        maxLength={recordBounds.labelCharacters}
        onInput={(number) => onChange(number === "" ? withoutNumber : { ...job, number })}
      />
      <TextField
        label="Customer"
        value={job.customer ?? ""}
        maxLength={recordBounds.labelCharacters}
        capitals
        onInput={(customer) => onChange(customer === "" ? withoutCustomer : { ...job, customer })}
      />
      <TextField
        label="Name of the job"
        hint="Such as the vehicle. It stands over its checks in the list."
        value={job.label}
        maxLength={recordBounds.labelCharacters}
        capitals
        onInput={(label) => onChange({ ...job, label })}
      />
    </>
  );
}
