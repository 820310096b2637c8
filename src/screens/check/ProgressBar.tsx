import { type Step, sections } from "../guide/steps.ts";

/** Where one is: a bar of sections, each as full as it is done. */
export function ProgressBar({ all, at }: { all: readonly Step[]; at: number }) {
  const step = all[at];
  const present = sections.filter((section) => all.some((each) => each.section === section));
  return (
    <div class="progress">
      <p class="progress-words">
        <span>{step?.section}</span>
        <span>
          Step {at + 1} of {all.length}
        </span>
      </p>
      <div class="progress-bar" aria-hidden="true">
        {present.map((section) => {
          const own = all.filter((each) => each.section === section);
          const done = own.filter((each) => each.state === "done").length;
          return (
            <span
              key={section}
              class={section === step?.section ? "progress-part progress-here" : "progress-part"}
              style={{ flexGrow: own.length }}
            >
              <span style={{ width: `${(100 * done) / own.length}%` }} />
            </span>
          );
        })}
      </div>
    </div>
  );
}
