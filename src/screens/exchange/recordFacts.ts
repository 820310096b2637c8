import type { CheckRecord, Role } from "../../records/check/checkRecord.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";

const roleWords: { readonly [Name in Role]: string } = {
  installer: messages.installer,
  customer: messages.customer,
  support: messages.support,
};

/** Readings in a record: one for each thing measured, however often it was. */
export function readingsCount(record: CheckRecord): number {
  const corners = record.corners.map(
    (corner) =>
      [corner.gap, corner.rideHeight, corner.cornerMassKg].filter(Boolean).length +
      Object.keys(corner.geometry ?? {}).length +
      corner.limits.length,
  );
  return (
    Object.keys(record.layout.readings).length + 1 + corners.reduce((sum, count) => sum + count, 0)
  );
}

export function whoText({ author }: CheckRecord): string {
  const { name = "", contact = "", role } = author;
  return [name.trim(), roleWords[role], contact.trim()].filter(Boolean).join(", ");
}

export function sidesText(record: CheckRecord): string {
  const sides = record.corners.map(({ side }) => side);
  return sides.length === 2 ? messages.bothSides : messages.side({ side: sides[0] });
}
