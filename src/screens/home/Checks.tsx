import type { ComponentChildren } from "preact";
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Sentence } from "../../physics/sentence.ts";
import { checkName } from "../../records/check/checkName.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { said } from "../../saying/texts.ts";
import { isInstalledOnApple } from "../../sharing/thisDevice.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { answerHref, goTo, stepHref } from "../addresses.ts";
import { AnswersIn } from "../exchange/maker/AnswersIn.tsx";
import { useSent } from "../exchange/maker/useSent.ts";
import { openHref } from "../exchange/shareRoutes.ts";
import { useDrop } from "../exchange/useDrop.ts";
import { filled } from "../filled.ts";
import { Button } from "../parts/Button.tsx";
import { Icon } from "../parts/Icon.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import type { Preferences } from "../preferences.ts";
import { countBefore } from "../saved/savedCount.ts";
import type { OpenedStore } from "../useStore.ts";
import { beginCheck } from "./beginCheck.ts";
import { CheckGroups } from "./CheckGroups.tsx";
import { isDemoDue, markDemoLoaded } from "./demoDue.ts";
import { FirstVisit } from "./FirstVisit.tsx";
import { OftenWays, OtherWays } from "./HomeWays.tsx";
import {
  BringYourChecks,
  ContinueLine,
  DeletedChecks,
  FaultNotice,
  KeepDialog,
  NotSavedHere,
  SavedReminder,
} from "./laterParts.ts";
import { MakerMark } from "./MakerMark.tsx";
import { MovingStop } from "./MovingStop.tsx";
import { NewerPackHere } from "./NewerPackHere.tsx";
import type { OpenedFiles } from "./openFiles.ts";
import { useChecks } from "./useChecks.ts";
import { useRowActs } from "./useRowActs.tsx";
import { useVerdicts } from "./useVerdicts.ts";

interface Props {
  readonly opened: OpenedStore | null;
  readonly preferences: Preferences;
  /** Whether the app works offline, and a new version. */
  readonly notice: ComponentChildren;
}

/** The demo check that "See an example" opens: one whose stop is too short. */
const exampleId = "6f6c1c9e-0000-4000-8000-000000000002";

const openedFiles = () => import("./openFiles.ts");

const keptOnlyHere = messages.checksStayOnThis;

/** The checks on this phone. */
export function Checks({ opened, preferences, notice }: Props) {
  const heading = useHeadingFocus("checks");
  const here = useChecks(opened);
  const { store, checks, deleted, aside, said: told, setSaid, refresh, settle } = here;
  const { act, asideRow, dialogs, forgetDeleted } = useRowActs(here, preferences.length);
  const [files, setFiles] = useState<OpenedFiles | null>(null);
  const picker = useRef<HTMLInputElement>(null);

  useVerdicts(store, checks, refresh);
  const sent = useSent(store, checks);

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
    if (store) await beginCheck(store, preferences, checks && checks.length + deleted.length);
  };

  const showExample = async () => {
    if (await addDemo()) goTo(answerHref(exampleId));
  };

  const openFiles = async (list: FileList | null) => {
    const picked = [...(list ?? [])];
    if (picker.current) picker.current.value = "";
    if (picked.length === 0 || !store) return;
    const { readFiles, goOnWith } = await openedFiles();
    const found = await readFiles(picked, preferences.length);
    if (found.checks.length + found.refused.length > 0) setFiles(found);
    else goOnWith(found);
  };

  useDrop(({ files: dropped }) => openFiles(dropped));

  const closeFiles = async (keep: readonly StoredCheck[] = []) => {
    setFiles(null);
    const { keepChecks, goOnWith } = await openedFiles();
    if (store && keep.length > 0) {
      const outcome = await keepChecks(store, keep);
      setSaid(outcome.ok ? null : outcome.fault.sentence);
      await refresh();
    }
    if (files) goOnWith(files);
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
          <span class="screen-name brand">{messages.stopfit}</span>
          {import.meta.env.VITE_PACK_MAKER && <MakerMark name={import.meta.env.VITE_PACK_MAKER} />}
        </>
      }
      actions={
        isFirst ? undefined : (
          <Button look="main" wide icon="plus" onClick={startNew} disabled={!store}>
            {messages.newCheck}
          </Button>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {isFirst ? messages.willThisBumpStop : messages.checksOnThisPhone}
      </h1>
      {isFirst && <MovingStop />}
      {isFirst && <FirstVisit ready={store !== null} onNew={startNew} onExample={showExample} />}
      {underWay && (
        <a class="continue" href={stepHref(underWay.id)}>
          <span>
            {filled(messages.continueWord, {
              checkName: <strong>{said(checkName(underWay))}</strong>,
              small: (
                <small>
                  <ContinueLine stored={underWay} />
                </small>
              ),
            })}
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
        aria-label={messages.filesToOpen}
        onChange={(event) => openFiles(event.currentTarget.files)}
      />
      {notice}
      <NewerPackHere />
      {opened?.fault && (
        <FaultNotice fault={opened.fault}>
          <div class="row">
            <Button onClick={opened.tryAgain}>{messages.tryAgain}</Button>
          </div>
        </FaultNotice>
      )}
      {store && unkept.length > 0 && !opened?.fault && (
        <NotSavedHere unkept={unkept} sentence={told} onTryAgain={tryUnkept} />
      )}
      {told && unkept.length === 0 && !opened?.fault && <FaultNotice fault={{ sentence: told }} />}
      {store && checks && !opened?.fault && (
        <SavedReminder store={store} checks={checks} deleted={deleted.length} />
      )}
      {import.meta.env.VITE_DESK && <AnswersIn answers={sent.answers} />}
      {checks?.length === 0 && isInstalledOnApple() && <BringYourChecks pasteHref={openHref} />}
      {(checks || opened?.fault) && (
        <OftenWays ready={store !== null} onOpenFile={() => picker.current?.click()} />
      )}
      {checks === null && <OneMoment />}
      {checks && checks.length + aside.length > 0 && (
        <CheckGroups
          checks={checks}
          sent={sent.words}
          onAct={act}
          damaged={(stored) => asideRow({ key: stored.id, name: said(checkName(stored)) })}
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
            forgetDeleted();
            // All that are listed, also those marked before the clock was set back; none marked later.
            const last = Math.max(...deleted.map((each) => Date.parse(each.deletedAt ?? "") || 0));
            if (store) settle(store.purge(new Date(last + 1)));
          }}
        />
      )}
      {(checks || opened?.fault) && <p class="small soft">{keptOnlyHere}</p>}
      {dialogs}
      {files && (
        <KeepDialog
          files={files}
          present={checks ?? []}
          onLeave={() => closeFiles()}
          onKeep={closeFiles}
        />
      )}
    </Screen>
  );
}
