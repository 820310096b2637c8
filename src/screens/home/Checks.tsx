import type { ComponentChildren } from "preact";
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Outcome } from "../../physics/outcome.ts";
import { inModelUnits, type Sentence } from "../../physics/sentence.ts";
import { checkName } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import {
  changeRecord,
  newStoredCheck,
  renameStored,
  type StoredCheck,
} from "../../records/check/storedCheck.ts";
import { isInstalledOnApple } from "../../sharing/thisDevice.ts";
import type { RowSetAside } from "../../storage/checkRow.ts";
import { answerHref, goTo, packHref, stepHref } from "../addresses.ts";
import { AnswersIn } from "../exchange/maker/AnswersIn.tsx";
import { useSent } from "../exchange/maker/useSent.ts";
import { SendStored } from "../exchange/SendButton.tsx";
import { openHref } from "../exchange/shareRoutes.ts";
import { useDrop } from "../exchange/useDrop.ts";
import { Button } from "../parts/Button.tsx";
import { Icon } from "../parts/Icon.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import type { Preferences } from "../preferences.ts";
import { countBefore, noteCount } from "../saved/savedCount.ts";
import { savedHref } from "../saved/savedRoute.ts";
import { authorNow } from "../storedPreferences.ts";
import type { OpenedStore } from "../useStore.ts";
import { CheckGroups } from "./CheckGroups.tsx";
import type { RowAct } from "./CheckRow.tsx";
import { isDemoDue, markDemoLoaded } from "./demoDue.ts";
import { FirstVisit } from "./FirstVisit.tsx";
import { OftenWays, OtherWays } from "./HomeWays.tsx";
import {
  BringYourChecks,
  ContinueLine,
  DeletedChecks,
  JobDialog,
  KeepDialog,
  RenameDialog,
  SavedReminder,
  SetAsideRow,
} from "./laterParts.ts";
import { MakerMark } from "./MakerMark.tsx";
import { MovingStop } from "./MovingStop.tsx";
import { NewerPackHere } from "./NewerPackHere.tsx";
import { NotSavedHere } from "./NotSavedHere.tsx";
import type { OpenedFiles } from "./openFiles.ts";
import { UndoBar } from "./UndoBar.tsx";
import { useVerdicts } from "./useVerdicts.ts";

interface Props {
  readonly opened: OpenedStore | null;
  readonly preferences: Preferences;
  /** Whether the app works offline, and a new version. */
  readonly notice: ComponentChildren;
}

/** The demo check that "See an example" opens: one whose stop is too short. */
const exampleId = "6f6c1c9e-0000-4000-8000-000000000002";

const keptOnlyHere =
  "Checks stay on this phone, in this browser. Nothing is sent anywhere unless you send it yourself.";

/** The checks on this phone. */
export function Checks({ opened, preferences, notice }: Props) {
  const heading = useHeadingFocus("checks");
  const [checks, setChecks] = useState<readonly ListedCheck[] | null>(null);
  const [deleted, setDeleted] = useState<readonly ListedCheck[]>([]);
  const [aside, setAside] = useState<readonly RowSetAside[]>([]);
  const [said, setSaid] = useState<Sentence | null>(null);
  const [undo, setUndo] = useState<ListedCheck | null>(null);
  const [sending, setSending] = useState<StoredCheck | null>(null);
  const [renaming, setRenaming] = useState<ListedCheck | null>(null);
  const [inJob, setInJob] = useState<ListedCheck | null>(null);
  const [files, setFiles] = useState<OpenedFiles | null>(null);
  const picker = useRef<HTMLInputElement>(null);
  const seenAny = useRef(false);
  const store = opened?.store ?? null;

  const refresh = useCallback(async () => {
    if (!store) return;
    const [present, gone, damaged] = await Promise.all([
      store.list(),
      store.list("deleted"),
      store.setAside(),
    ]);
    setAside(damaged.ok ? damaged.value : []);
    if (!present.ok) {
      setSaid(present.fault.sentence);
      setChecks([]);
      return;
    }
    setChecks(present.value);
    setDeleted(gone.ok ? gone.value : []);
    if (!gone.ok || opened?.fault) return;
    const count = present.value.length + gone.value.length;
    seenAny.current ||= count > 0;
    // None where none was seen: they may have been cleared, which is still to be told.
    if (seenAny.current) noteCount(count);
  }, [store, opened?.fault]);

  useEffect(() => {
    if (!store) return;
    refresh();
    return store.subscribe(() => refresh());
  }, [store, refresh]);

  useVerdicts(store, checks, refresh);
  const sent = useSent(store, checks);

  const settle = async (work: Promise<Outcome<unknown>>) => {
    const outcome = await work;
    setSaid(outcome.ok ? null : outcome.fault.sentence);
    await refresh();
    return outcome.ok;
  };

  /** A check of the list with its pictures, for what takes it elsewhere. */
  const withWhole = async (id: string, use: (whole: StoredCheck) => unknown) => {
    const found = store && (await store.get(id));
    if (found?.ok && found.value) await use(found.value);
    else if (found?.ok === false) setSaid(found.fault.sentence);
    else await refresh();
  };

  const asideRow = (row: RowSetAside) => (
    <SetAsideRow
      key={`aside ${String(row.key)}`}
      row={row}
      onSave={async () => {
        const text = store && (await store.rowText(row.key));
        if (text?.ok) (await import("../checkFile.ts")).saveDamagedRow(text.value);
        else if (text?.ok === false) setSaid(text.fault.sentence);
      }}
      onDelete={() => store && settle(store.discard(row.key))}
    />
  );

  const addDemo = useCallback(async () => {
    if (!store) return false;
    const { addDemoChecks } = await import("./demoChecks.ts");
    const outcome = await addDemoChecks(store, preferences.length);
    setSaid(outcome.ok ? null : outcome.fault.sentence);
    if (outcome.ok) markDemoLoaded();
    await refresh();
    return outcome.ok;
  }, [store, preferences.length, refresh]);

  useEffect(() => {
    if (store && isDemoDue()) addDemo();
  }, [store, addDemo]);

  const act = async (wanted: RowAct, stored: ListedCheck) => {
    const { id } = stored;
    if (!store) return;
    switch (wanted) {
      case "rename":
        return setRenaming(stored);
      case "copy":
        return settle(store.copy(id, `${checkName(stored)} (copy)`));
      case "send":
        return withWhole(id, setSending);
      case "save":
        return withWhole(id, async (whole) =>
          (await import("../checkFile.ts")).saveCheckFile(whole),
        );
      case "job":
        return setInJob(stored);
      case "otherAxle":
        return withWhole(id, async (whole) => {
          const { beginOtherAxle } = await import("../job/beginOtherAxle.ts");
          await settle(beginOtherAxle(store, whole));
        });
      default:
        if (await settle(store.remove(id))) setUndo(stored);
    }
  };

  const unkept = store?.unkept() ?? [];
  const tryUnkept = async () => {
    let failed: Sentence | null = null;
    for (const stored of unkept) {
      const outcome = store ? await store.put(stored) : null;
      if (outcome?.ok === false) failed = outcome.fault.sentence;
    }
    setSaid(failed);
    await refresh();
  };

  const startNew = async () => {
    if (!store) return;
    const author = authorNow(preferences);
    const fresh = newStoredCheck();
    const check = author ? changeRecord(fresh, (record) => ({ ...record, author })) : fresh;
    // Where nothing can be kept the check goes on in memory, and its screen offers the file.
    const outcome = await store.put(check);
    if (outcome.ok && checks) noteCount(checks.length + deleted.length + 1);
    goTo(stepHref(check.id, "vehicle"));
  };

  const showExample = async () => {
    if (await addDemo()) goTo(answerHref(exampleId));
  };

  const openFiles = async (list: FileList | null) => {
    const picked = [...(list ?? [])];
    if (picker.current) picker.current.value = "";
    if (picked.length === 0 || !store) return;
    const { readFiles } = await import("./openFiles.ts");
    const found = await readFiles(picked, preferences.length);
    if (found.checks.length + found.refused.length > 0) setFiles(found);
    else await goOnWith(found);
  };

  /** What has a screen of its own: replies, a backup, or a pack. */
  const goOnWith = async ({ backup, pack, replies }: OpenedFiles) => {
    if (replies.length > 0) {
      (await import("../exchange/handed.ts")).handReceived({ replies, backup });
      goTo(openHref);
    } else if (backup) {
      const { handBackup } = await import("../saved/backupHere.ts");
      handBackup(backup, "opened from the list");
      goTo(savedHref);
    } else if (pack) {
      (await import("../handedPack.ts")).handPack(pack, pack.name);
      goTo(packHref);
    }
  };

  useDrop(({ files: dropped }) => openFiles(dropped));

  const closeFiles = async (keep: readonly StoredCheck[] = []) => {
    setFiles(null);
    if (store && keep.length > 0) {
      const { keepChecks } = await import("./openFiles.ts");
      const outcome = await keepChecks(store, keep);
      setSaid(outcome.ok ? null : outcome.fault.sentence);
      await refresh();
    }
    if (files) await goOnWith(files);
  };

  // Until the store is read: first where no check was ever counted here.
  const isFirst =
    !isDemoDue() && (checks === null ? countBefore() === null : checks.length + aside.length === 0);
  const underWay = checks?.find(
    ({ lastVerdict, progress: { step } }) => !lastVerdict && step && step !== "answer",
  );

  return (
    <Screen
      top={
        <>
          <span class="screen-name brand">Stopfit</span>
          {import.meta.env.VITE_PACK_MAKER && <MakerMark name={import.meta.env.VITE_PACK_MAKER} />}
        </>
      }
      actions={
        isFirst ? undefined : (
          <Button look="main" wide icon="plus" onClick={startNew} disabled={!store}>
            New check
          </Button>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {isFirst ? "Will this bump stop work on your vehicle?" : "Checks on this phone"}
      </h1>
      {isFirst && <MovingStop />}
      {isFirst && <FirstVisit ready={store !== null} onNew={startNew} onExample={showExample} />}
      {underWay && (
        <a class="continue" href={stepHref(underWay.id)}>
          <span>
            Continue: <strong>{checkName(underWay)}</strong>
            <small>
              <ContinueLine stored={underWay} />
            </small>
          </span>
          <Icon name="forward" />
        </a>
      )}
      <input
        ref={picker}
        type="file"
        multiple
        accept=".json,.txt,application/json,text/plain"
        class="unseen"
        tabIndex={-1}
        aria-label="Files to open"
        onChange={(event) => openFiles(event.currentTarget.files)}
      />
      {notice}
      <NewerPackHere />
      {opened?.fault && (
        <Notice tone="no" live>
          <p>{inModelUnits(opened.fault.sentence)}</p>
          <div class="row">
            <Button onClick={opened.tryAgain}>Try again</Button>
          </div>
        </Notice>
      )}
      {store && unkept.length > 0 && !opened?.fault && (
        <NotSavedHere unkept={unkept} sentence={said} onTryAgain={tryUnkept} />
      )}
      {said && unkept.length === 0 && !opened?.fault && (
        <Notice tone="no" live>
          <p>{inModelUnits(said)}</p>
        </Notice>
      )}
      {store && checks && !opened?.fault && (
        <SavedReminder store={store} checks={checks} deleted={deleted.length} />
      )}
      {import.meta.env.VITE_DESK && <AnswersIn answers={sent.answers} />}
      {(checks || opened?.fault) && (
        <OftenWays ready={store !== null} onOpenFile={() => picker.current?.click()} />
      )}
      {checks === null && <p class="soft">One moment …</p>}
      {checks?.length === 0 && isInstalledOnApple() && <BringYourChecks pasteHref={openHref} />}
      {checks && checks.length + aside.length > 0 && (
        <CheckGroups
          checks={checks}
          sent={sent.words}
          onAct={act}
          damaged={(stored) => asideRow({ key: stored.id, name: checkName(stored) })}
        >
          {aside.map(asideRow)}
        </CheckGroups>
      )}
      {(checks || opened?.fault) && (
        <OtherWays ready={store !== null} quick={!isFirst} onExamples={addDemo} />
      )}
      {deleted.length > 0 && (
        <DeletedChecks
          deleted={deleted}
          onRestore={(id) => store && settle(store.restore(id))}
          onPurge={() => {
            setUndo(null);
            // All that are listed, also those marked before the clock was set back; none marked later.
            const last = Math.max(...deleted.map((each) => Date.parse(each.deletedAt ?? "") || 0));
            if (store) settle(store.purge(new Date(last + 1)));
          }}
        />
      )}
      {(checks || opened?.fault) && <p class="small soft">{keptOnlyHere}</p>}
      {sending && (
        <SendStored stored={sending} unit={preferences.length} onLeave={() => setSending(null)} />
      )}
      {renaming && (
        <RenameDialog
          stored={renaming}
          onLeave={() => setRenaming(null)}
          onName={(name) => {
            setRenaming(null);
            if (store) {
              settle(store.update(renaming.id, (current) => renameStored(current, name)));
            }
          }}
        />
      )}
      {inJob && store && (
        <JobDialog
          store={store}
          stored={inJob}
          checks={checks ?? []}
          onLeave={() => setInJob(null)}
          onDone={(kept) => {
            setInJob(null);
            settle(Promise.resolve(kept));
          }}
        />
      )}
      {files && (
        <KeepDialog
          files={files}
          present={checks ?? []}
          onLeave={() => closeFiles()}
          onKeep={closeFiles}
        />
      )}
      {undo && (
        <UndoBar
          key={undo.id}
          words={`Deleted: ${checkName(undo)}`}
          onUndo={() => {
            setUndo(null);
            if (store) settle(store.restore(undo.id));
          }}
          onGone={() => setUndo(null)}
        />
      )}
    </Screen>
  );
}
