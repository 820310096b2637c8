import { useMemo } from "preact/hooks";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import type { OddReading } from "../../records/review/oddReading.ts";
import { oddReadings } from "../../records/review/oddReadings.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { Card } from "../parts/Card.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";

/** More than a phone's screen holds are not read one by one: they fold. */
const shownAtMost = 8;

function OddList({ odd, unit }: { odd: readonly OddReading[]; unit: LengthUnit }) {
  return (
    <ul class="stack-close">
      {odd.map(({ reading, kind, sentence }, index) => (
        <li key={`${reading} ${kind} ${index}`} data-odd={kind}>
          <bdi>{sentenceText(sentence, unit)}</bdi>
        </li>
      ))}
    </ul>
  );
}

/** What a check that someone sent claims, and a person should see before going by it. */
export function ClaimsCard({
  record,
  pack,
  unit,
}: {
  record: CheckRecord;
  pack: Pack;
  unit: LengthUnit;
}) {
  const odd = useMemo(() => oddReadings(record, pack), [record, pack]);
  if (odd.length === 0) return null;
  return (
    <Card heading={messages.lookAtTheseFirst}>
      <OddList odd={odd.slice(0, shownAtMost)} unit={unit} />
      {odd.length > shownAtMost && (
        <Disclosure summary={messages.moreToLookAt({ odd: odd.length - shownAtMost })}>
          <OddList odd={odd.slice(shownAtMost)} unit={unit} />
        </Disclosure>
      )}
      {odd.some(({ kind }) => kind === "demand") && (
        <p class="small soft">{messages.onceYouKeepIt}</p>
      )}
    </Card>
  );
}
