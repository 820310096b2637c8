import type { ReadingId } from "../../physics/readings/index.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { earlierOf } from "../../records/remeasure/earlierValues.ts";
import * as messages from "../../words/compiled/screens/remeasure.ts";
import { language } from "../../words/language.ts";
import { Disclosure } from "../parts/Disclosure.tsx";
import { valuesWords } from "./remeasureWords.ts";

const when = (iso: string) =>
  new Date(iso).toLocaleString(language, { dateStyle: "medium", timeStyle: "short" });

/** What was read for this reading before it was taken again. */
export function EarlierReadings({ stored, id }: { stored: StoredCheck; id: ReadingId }) {
  const earlier = earlierOf(stored, id);
  if (earlier.length === 0) return null;
  return (
    <Disclosure summary={messages.earlierValues({ earlier: earlier.length })}>
      <ul>
        {earlier.map(({ entry, until }) => (
          <li key={until}>
            {messages.until({ values: valuesWords(id, entry), when: when(until) })}
          </li>
        ))}
      </ul>
    </Disclosure>
  );
}
