import * as messages from "../../../words/compiled/screens/exchange/maker.ts";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";
import type { Sent } from "./sent.ts";

/** Over the list: answers that came in from the desk and nobody has read. */
export function AnswersIn({ answers }: Pick<Sent, "answers">) {
  return (
    <>
      {answers.map(({ id, about, open }) => (
        <Notice key={id} tone="info" live>
          <p>
            {messages.reviewDeskAnsweredAbout}
            <bdi>{about}</bdi>”.
          </p>
          <div class="row">
            <Button look="main" onClick={open}>
              {messages.readAnswer}
            </Button>
          </div>
        </Notice>
      ))}
    </>
  );
}
