// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const job: string = "Job";
export const cancel: string = "Cancel";
export const save: string = "Save";
export const thisCheckBelongsTo: string = "This check belongs to";
export const newJob: string = "A new job";
export const beforeOrAfterChange: string = "Before or after the change?";
export const before: string = "Before";
export const after: string = "After";
export const neither: string = "Neither";
export const nameNumberAndCustomer = (d: { sharing: string | number }): string => "Name, number and customer are the same in all " + d.sharing + " checks.";
export const takeThisCheckOut: string = "Take this check out of the job";
export const jobNumber: string = "Job number";
export const customer: string = "Customer";
export const nameOfJob: string = "Name of the job";
export const suchAsVehicleIt: string = "Such as the vehicle. It stands over its checks in the list.";
export const job2 = (d: { number: string | number }): string => "job " + d.number;
