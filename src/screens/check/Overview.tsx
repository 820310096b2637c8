import { useEffect, useRef } from "preact/hooks";
import * as messages from "../../words/compiled/screens/check.ts";
import { fullTravelStep, type Step, sections } from "../guide/steps.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Icon, type IconName } from "../parts/Icon.tsx";
import { settingsHref, settingsName } from "../settings/settingsRoute.ts";

interface Props {
  readonly all: readonly Step[];
  readonly at: number;
  readonly onGo: (step: string) => void;
}

function stateOf(step: Step): { words: string; icon: IconName | null; look: string } {
  if (step.unreadable) return { words: messages.toFix, icon: "cross", look: "unreadable" };
  if (step.id === "finish") return { words: "", icon: null, look: "todo" };
  if (step.state === "done") return { words: messages.doneWord, icon: "tick", look: "done" };
  if (step.state === "skipped") {
    return {
      words: step.needed ? messages.skippedStillNeeded : "skipped",
      icon: "minus",
      look: "skipped",
    };
  }
  return { words: step.needed ? messages.toDo : messages.canBeSkipped, icon: null, look: "todo" };
}

/** All steps of this check, to go to any of them. */
function Overview({ all, at, onGo }: Props) {
  return (
    <nav aria-label={messages.allSteps} class="overview">
      {sections.map((section) => {
        const own = all.filter((step) => step.section === section);
        if (own.length === 0) return null;
        return (
          <section key={section}>
            <h2>{section}</h2>
            <ol>
              {own.map((step) => {
                const { words, icon, look } = stateOf(step);
                return (
                  <li key={step.id}>
                    <button
                      type="button"
                      class={`overview-step overview-${look}`}
                      aria-current={all[at]?.id === step.id ? "step" : undefined}
                      onClick={() => onGo(step.id)}
                    >
                      <span class="overview-mark">{icon && <Icon name={icon} size={16} />}</span>
                      <span class="overview-name">{step.name}</span>
                      <span class={look === "done" ? "unseen" : "overview-state"}>{words}</span>
                    </button>
                  </li>
                );
              })}
            </ol>
          </section>
        );
      })}
      <section>
        <h2>{messages.byHand}</h2>
        <button type="button" class="overview-step" onClick={() => onGo(fullTravelStep)}>
          <span class="overview-mark" />
          <span class="overview-name">{messages.fullTravelCheck}</span>
          <span class="overview-state">{messages.canBeSkipped}</span>
        </button>
      </section>
      <ButtonLink look="quiet" href={settingsHref}>
        {settingsName}
      </ButtonLink>
    </nav>
  );
}

/** The steps beside a step, where the screen is wide: the list follows to the step that is open. */
export function OverviewBeside(props: Props) {
  const aside = useRef<HTMLElement>(null);
  const { at } = props;
  useEffect(() => {
    const list = aside.current;
    const current = list?.querySelector('[aria-current="step"]');
    if (!list || !current) return;
    const middle = (element: Element) => {
      const { top, height } = element.getBoundingClientRect();
      return top + height / 2;
    };
    list.scrollTop += middle(current) - middle(list);
  }, [at]);
  return (
    <aside ref={aside} class="wide-only step-aside">
      <Overview {...props} />
    </aside>
  );
}

export function OverviewDialog({
  onLeave,
  leave = messages.backToThisStep,
  ...props
}: Props & { onLeave: () => void; leave?: string }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (element && !element.open) element.showModal();
    element?.querySelector('[aria-current="step"]')?.scrollIntoView({ block: "center" });
  }, []);
  return (
    <dialog
      ref={dialog}
      class="dialog overview-dialog"
      aria-label={messages.allSteps}
      onCancel={(event) => {
        event.preventDefault();
        onLeave();
      }}
    >
      <Overview {...props} />
      <div class="overview-leave">
        <Button look="main" wide onClick={onLeave}>
          {leave}
        </Button>
      </div>
    </dialog>
  );
}
