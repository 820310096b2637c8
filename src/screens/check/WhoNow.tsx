import { useState } from "preact/hooks";
import * as messages from "../../words/compiled/screens/check.ts";
import { Button } from "../parts/Button.tsx";
import { TextField } from "../parts/Field.tsx";
import { changePreferences, measurerNow, usePreferences } from "../preferences.ts";

/**
 * Who takes the readings from here on: asked on a shared phone whose last name is a day old, where a check
 * is gone on with. Who began the check stays its author.
 */
export function WhoNow() {
  const { shared, author } = usePreferences();
  const [name, setName] = useState("");
  if (!shared || measurerNow() !== null) return null;
  const keep = () => {
    if (name.trim() === "") return;
    changePreferences({
      author: { role: author?.role ?? "installer", name: name.trim() },
      authorAt: new Date().toISOString(),
    });
  };
  return (
    <section class="card" aria-label={messages.whoMeasuresNow}>
      <TextField
        label={messages.whoMeasuresNow2}
        hint={messages.thisPhoneIsShared}
        value={name}
        maxLength={100}
        capitals
        onInput={setName}
        onEnter={keep}
      />
      <div class="row">
        <Button disabled={name.trim() === ""} onClick={keep}>
          {messages.measureAs({ name: name.trim() === "" ? "…" : name.trim() })}
        </Button>
      </div>
    </section>
  );
}
