import { useEffect, useMemo, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { readCheckText } from "../../records/check/readCheck.ts";
import { type Decision, inOrder } from "../../records/review/decision.ts";
import type { Listed } from "../../records/review/listedSubmission.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import type { Desk } from "./useDesk.ts";

/** One version with its record. */
interface OpenVersion {
  readonly submission: Listed;
  readonly record: CheckRecord;
}

export type OpenCheck =
  | { readonly state: "loading" }
  | { readonly state: "gone"; readonly fault: Fault | null }
  | {
      readonly state: "here";
      readonly shown: OpenVersion;
      /** The version before the one shown. */
      readonly before: OpenVersion | null;
      /** Newest first. */
      readonly versions: readonly Listed[];
    };

/** A version of a check by its key, with the one before it. */
export function useOpenCheck(desk: Desk, key: string): OpenCheck {
  const { store, checks } = desk;
  const [open, setOpen] = useState<OpenCheck>({ state: "loading" });
  const versions = useMemo(
    () => checks?.find((check) => check.versions.some((one) => one.key === key))?.versions ?? null,
    [checks, key],
  );
  // Names and photos of a shared desk come after the readings, and can be erased.
  const keys =
    versions
      ?.map((version) =>
        [version.key, version.who, version.contact, version.photosLeftOut].join("\n"),
      )
      .join("\n") ?? null;

  useEffect(() => {
    if (!store || checks === null) return;
    let left = false;
    const load = async () => {
      const place = versions?.findIndex((version) => version.key === key) ?? -1;
      const submission = versions?.[place];
      if (!versions || !submission) return setOpen({ state: "gone", fault: null });
      const shown = await versionOf(desk, submission);
      const older = versions[place + 1];
      const before = older ? await versionOf(desk, older) : null;
      if (left) return;
      if (!shown.ok) setOpen({ state: "gone", fault: shown.fault });
      else {
        setOpen({
          state: "here",
          shown: shown.value,
          before: before?.ok ? before.value : null,
          versions,
        });
      }
    };
    load();
    return () => {
      left = true;
    };
  }, [store, checks === null, key, keys]);
  return open;
}

async function versionOf({ store }: Desk, submission: Listed) {
  const text = (await store?.text(submission.key)) ?? null;
  if (text === null) return { ok: false, fault: null } as const;
  if (!text.ok) return text;
  const read = readCheckText(text.value ?? "", messages.check3);
  return read.ok ? ({ ok: true, value: { submission, record: read.value } } as const) : read;
}

/** What was decided of one check, oldest first. */
export function useDecisions({ decisions }: Desk, checkId: string | null): readonly Decision[] {
  return useMemo(
    () => inOrder(decisions.filter((decision) => decision.checkId === checkId)),
    [decisions, checkId],
  );
}
