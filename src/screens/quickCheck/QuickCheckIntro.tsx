import type { ComponentChildren, Ref } from "preact";
import { checksHref } from "../addresses.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { Screen } from "../parts/Screen.tsx";

export function QuickCheckTop() {
  return (
    <>
      <ButtonLink look="quiet" href={checksHref} icon="back" label="All checks" />
      <span class="screen-name">Do I need a taller stop?</span>
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
        Do I need a taller stop?
      </h1>
      <p>Five readings at most, with a tape measure. The rest comes from the parts library.</p>
      <Notice tone="care">
        <p>
          Measure with the vehicle standing on its wheels, on level ground, as it usually stands.
          Loosen nothing. Never reach under a vehicle held by a jack alone.
        </p>
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
