import type { Job } from "../../records/check/checkRecord.ts";
import { recordBounds } from "../../records/check/recordFormat.ts";
import * as messages from "../../words/compiled/screens/job.ts";
import { TextField } from "../parts/Field.tsx";

/** What a job is called, as it is typed; an emptied field is left out. */
export function JobFields({ job, onChange }: { job: Job; onChange: (job: Job) => void }) {
  const { number: _number, ...withoutNumber } = job;
  const { customer: _customer, ...withoutCustomer } = job;
  return (
    <>
      <TextField
        label={messages.jobNumber}
        value={job.number ?? ""}
        maxLength={recordBounds.labelCharacters}
        onInput={(number) => onChange(number === "" ? withoutNumber : { ...job, number })}
      />
      <TextField
        label={messages.customer}
        value={job.customer ?? ""}
        maxLength={recordBounds.labelCharacters}
        capitals
        onInput={(customer) => onChange(customer === "" ? withoutCustomer : { ...job, customer })}
      />
      <TextField
        label={messages.nameOfJob}
        hint={messages.suchAsVehicleIt}
        value={job.label}
        maxLength={recordBounds.labelCharacters}
        capitals
        onInput={(label) => onChange({ ...job, label })}
      />
    </>
  );
}
