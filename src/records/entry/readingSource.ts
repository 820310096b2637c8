import { parseReadingId } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/entry.ts";
import type { Message } from "../../words/message.ts";
import type { PartialCheckRecord, TypedReading } from "../check/checkRecord.ts";

export type ReadingSource = NonNullable<TypedReading["source"]>;

/** Who says a reading, behind its number. */
export const sourceWords: { readonly [Source in ReadingSource]: Message } = {
  measured: messages.measured,
  pack: messages.fromLibrary,
  estimated: messages.estimated,
};

export function sourceOf(reading: TypedReading): ReadingSource {
  return reading.source ?? "measured";
}

/** The same with whoever took it: "measured by Ada", "from the library", "estimated". */
export function sourceText(reading: TypedReading): Message {
  const source = sourceOf(reading);
  return source === "measured" && reading.by !== undefined
    ? messages.measuredBy({ by: reading.by })
    : sourceWords[source];
}

/** Who says the reading that stands in the record under this id; null where none does. */
export function sourceIn(record: PartialCheckRecord, id: string): ReadingSource | null {
  const reading = readingIn(record, id);
  return reading === undefined ? null : sourceOf(reading);
}

function readingIn(record: PartialCheckRecord, id: string): TypedReading | undefined {
  const place = parseReadingId(id);
  if (place === null) return undefined;
  const corner =
    "side" in place ? record.corners.find(({ side }) => side === place.side) : undefined;
  switch (place.of) {
    case "geometry":
      return place.side === null
        ? record.layout?.readings?.[place.name]
        : corner?.geometry?.[place.name];
    case "corner":
      return corner?.[place.name];
    case "limit":
      return place.name === "perWheel" ? undefined : corner?.limits[place.index]?.[place.name];
    case "stop":
      return place.name === "freeHeight" ? record.stop?.freeHeight : undefined;
    default:
      return undefined;
  }
}
