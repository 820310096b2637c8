import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";

/** A question that must be answered before going on. Esc means "leave it". */
export function Dialog({
  heading,
  onLeave,
  actions,
  children,
}: {
  heading: ComponentChildren;
  onLeave: () => void;
  actions: ComponentChildren;
  children?: ComponentChildren;
}) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (element && !element.open) {
      element.showModal();
    }
  }, []);
  return (
    <dialog
      ref={dialog}
      class="dialog"
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onLeave();
      }}
    >
      <div class="dialog-body">
        <h2 id={id}>{heading}</h2>
        {children}
        <div class="dialog-actions">{actions}</div>
      </div>
    </dialog>
  );
}
