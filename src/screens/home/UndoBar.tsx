import { useEffect, useRef } from "preact/hooks";
import * as messages from "../../words/compiled/screens/home.ts";
import { Button } from "../parts/Button.tsx";
import "./undoBar.css";

/** How long one can change one's mind, ms. */
const undoTime = 10_000;

interface UndoBarProps {
  readonly words: string;
  readonly onUndo: () => void;
  readonly onGone: () => void;
}

/** Says what was done and takes it back. Stays while it is used with the keyboard or the pointer. */
export function UndoBar({ words, onUndo, onGone }: UndoBarProps) {
  const bar = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const gone = useRef(onGone);
  gone.current = onGone;
  useEffect(() => {
    button.current?.focus({ preventScroll: true });
    let timer: ReturnType<typeof setTimeout>;
    const leave = () => {
      const used = bar.current?.matches(":hover") || bar.current?.querySelector(":focus-visible");
      if (used) timer = setTimeout(leave, 1000);
      else gone.current();
    };
    timer = setTimeout(leave, undoTime);
    return () => clearTimeout(timer);
  }, []);
  return (
    <div ref={bar} class="undo-bar" role="status">
      <span>{words}</span>
      <Button look="main" icon="undo" buttonRef={button} onClick={onUndo}>
        {messages.undo}
      </Button>
    </div>
  );
}
