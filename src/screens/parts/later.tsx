import type { ComponentType } from "preact";
import { useLayoutEffect, useState } from "preact/hooks";
import * as messages from "../../words/compiled/screens/parts.ts";
import { Button } from "./Button.tsx";
import { Notice } from "./Notice.tsx";
import { OneMoment } from "./OneMoment.tsx";
import { whenIdle } from "./whenIdle.ts";

/** A component of which only the name is here until it is shown. */
export type Later<Props extends object> = ((props: Props) => preact.JSX.Element | null) & {
  preload: () => Promise<void>;
};

/**
 * A component whose code is fetched when it is first shown; `waiting` stands there until then.
 * `preload` fetches it ahead of that, with the texts of all messages: what is fetched may show any. A quiet
 * one shows nothing until then, and leaves the way to what the person asked for.
 */
export function later<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  {
    quiet = false,
    waiting: Waiting = OneMoment,
  }: { quiet?: boolean; waiting?: ComponentType<Props> } = {},
): Later<Props> {
  let loaded: ComponentType<Props> | null = null;
  const preload = async () => {
    if (loaded) return;
    [loaded] = await Promise.all([load(), import("../../saying/everyText.ts")]);
  };

  function Later(props: Props) {
    const [state, setState] = useState<"waiting" | "ready" | "failed">(
      loaded ? "ready" : "waiting",
    );
    useLayoutEffect(() => {
      if (state !== "waiting") return;
      let left = false;
      const start = () =>
        preload().then(
          () => !left && setState("ready"),
          () => !left && setState("failed"),
        );
      if (quiet) whenIdle(start);
      else start();
      return () => {
        left = true;
      };
    }, [state]);
    if (loaded) {
      const Loaded = loaded;
      return <Loaded {...props} />;
    }
    if (quiet) return null;
    if (state === "waiting") return <Waiting {...props} />;
    return (
      <Notice tone="no" live>
        <p>{messages.thisPartOfStopfit}</p>
        <div class="row">
          <Button look="main" onClick={() => setState("waiting")}>
            {messages.tryAgain}
          </Button>
        </div>
      </Notice>
    );
  }
  return Object.assign(Later, { preload });
}
