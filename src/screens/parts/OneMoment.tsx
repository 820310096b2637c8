import * as messages from "../../words/compiled/screens/parts.ts";
export function OneMoment() {
  return <p class="later-waiting">{messages.oneMoment}</p>;
}
