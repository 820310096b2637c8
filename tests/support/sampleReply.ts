import type { Reply } from "../../src/records/review/reply.ts";

/** A desk's reply, as a file or a link brings it. */
export const reply: Reply = {
  format: "stopfit-reply",
  version: 1,
  id: "r1",
  checkId: "c1",
  answers: "digest",
  createdAt: "2026-05-04T10:00:00.000Z",
  from: "Robin Hale",
  kind: "askAgain",
  vehicle: "Marlow",
  axle: "front",
  readings: ["left.gap"],
  text: "Take the gap again.",
};
