import type { ComponentChildren, Ref } from "preact";
import * as messages from "../../words/compiled/screens/quickCheck.ts";
import { checksHref } from "../addresses.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { Screen } from "../parts/Screen.tsx";

export function QuickCheckTop() {
  return (
    <>
      <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
      <span class="screen-name">{messages.doINeedTaller}</span>
    </>
  );
}

/** What is said before anything is asked, the caution with it. */
export function QuickCheckIntro({
  heading,
  children,
}: {
  heading?: Ref<HTMLHeadingElement>;
  children: ComponentChildren;
}) {
  return (
    <>
      <h1 {...(heading && { ref: heading })} tabIndex={-1}>
        {messages.doINeedTaller}
      </h1>
      <p>{messages.fiveReadingsAtMost}</p>
      <Notice tone="care">
        <p>{messages.measureWithVehicleStanding}</p>
      </Notice>
      {children}
    </>
  );
}

/** The caution is there to be read while the questions are still being fetched. */
export function QuickCheckWaiting({ stage }: { stage: "questions" | "answer" }) {
  const wait = <OneMoment />;
  if (stage === "answer") return wait;
  return (
    <Screen top={<QuickCheckTop />}>
      <QuickCheckIntro>{wait}</QuickCheckIntro>
    </Screen>
  );
}
