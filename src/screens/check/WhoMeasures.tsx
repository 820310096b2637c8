import type { Author, Role } from "../../records/check/checkRecord.ts";
import { changeRecord } from "../../records/check/storedCheck.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices } from "../parts/Choices.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { TextField } from "../parts/Field.tsx";
import { changePreferences, measurerNow, preferences } from "../preferences.ts";

const roles: readonly { value: Role; name: string; hint: string }[] = [
  { value: "installer", name: messages.installer, hint: messages.youFitPart },
  { value: "customer", name: messages.owner, hint: messages.youMeasureYourOwn },
  { value: "support", name: messages.support, hint: messages.youEnterItFor },
];

/** Who measures: remembered from check to check, so folded away. */
export function WhoMeasures({
  stored,
  change,
  next,
}: Pick<StepProps, "stored" | "change" | "next">) {
  const author = stored.record.author ?? {};
  const put = (part: Partial<Author>) =>
    change((current) => {
      const merged = { role: "installer" as Role, ...current.record.author, ...part };
      const { name, contact, ...rest } = merged;
      const whole: Author = { ...rest, ...(name && { name }), ...(contact && { contact }) };
      changePreferences({ author: whole, authorAt: new Date().toISOString() });
      return changeRecord(current, (record) => ({ ...record, author: whole }));
    });
  const { shared } = preferences();
  const now = measurerNow();
  // On a shared phone it is somebody's turn to say so before anything is typed.
  const asked = shared && (now === null || now !== author.name?.trim());
  return (
    <Disclosure
      open={asked}
      summary={messages.whoIsMeasuring({
        hasName: Boolean(author.name?.trim()),
        name: author.name,
        role: author.role,
      })}
    >
      <Choices
        legend={messages.youAre}
        options={roles}
        value={author.role ?? null}
        onChange={(role) => put({ role })}
      />
      <TextField
        label={messages.nameIfYouLike}
        value={author.name ?? ""}
        maxLength={100}
        capitals
        onInput={(name) => put({ name })}
        onEnter={next}
      />
      <TextField
        label={messages.phoneOrEMail}
        hint={messages.staysOnThisPhone}
        value={author.contact ?? ""}
        maxLength={200}
        onInput={(contact) => put({ contact })}
        onEnter={next}
      />
    </Disclosure>
  );
}
