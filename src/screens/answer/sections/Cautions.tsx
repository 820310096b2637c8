import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { cautionsOf } from "../../guide/cautions.ts";
import { Disclosure } from "../../parts/Disclosure.tsx";

/** One line at what has to be done under the vehicle, which opens. Never left out. */
export function Cautions({ raised }: { raised: boolean }) {
  return (
    <Disclosure summary={messages.beforeYouGoUnder}>
      <ul class="cautions">
        {cautionsOf(raised ? "raised" : "level").map(({ id, words }) => (
          <li key={id}>{words}</li>
        ))}
      </ul>
    </Disclosure>
  );
}
