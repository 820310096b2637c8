import { useEffect, useLayoutEffect, useMemo, useRef } from "preact/hooks";
import { checkName } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { checksHref } from "../addresses.ts";
import { useSent } from "../exchange/maker/useSent.ts";
import { onKept } from "../keptSignal.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import type { Preferences } from "../preferences.ts";
import type { OpenedStore } from "../useStore.ts";
import { beginCheck } from "./beginCheck.ts";
import { CheckGroups } from "./CheckGroups.tsx";
import { useChecks } from "./useChecks.ts";
import { useRowActs } from "./useRowActs.tsx";
import { useVerdicts } from "./useVerdicts.ts";
import "../styles/panes.css";
import "./checksBeside.css";

export interface ChecksBesideProps {
  readonly opened: OpenedStore;
  readonly preferences: Preferences;
  /** The check that stands open beside the list. */
  readonly open: string;
}

/** While something is typed the list is read again only once that stands still, ms. */
const calm = 500;

let scrollLeftAt = 0;

/** A row does not jump to the top as its check is opened or changed: new ones come first, the rest stay. */
function useSteadyOrder(checks: readonly ListedCheck[]): readonly ListedCheck[] {
  const places = useRef<ReadonlyMap<string, number>>(new Map());
  return useMemo(() => {
    const before = places.current;
    const fresh = checks.filter(({ id }) => !before.has(id));
    const known = checks.filter(({ id }) => before.has(id));
    const place = ({ id }: ListedCheck) => before.get(id) ?? 0;
    const ordered = [...fresh, ...known.sort((a, b) => place(a) - place(b))];
    places.current = new Map(ordered.map(({ id }, at) => [id, at]));
    return ordered;
  }, [checks]);
}

const none: readonly ListedCheck[] = [];

/** The checks on this phone beside the one that is open, where the screen is wide. */
export function ChecksBeside({ opened, preferences, open }: ChecksBesideProps) {
  const here = useChecks(opened);
  const { store, checks, deleted, aside, said: notice, refresh } = here;
  const { act, asideRow, dialogs } = useRowActs(here, preferences.length);
  const ordered = useSteadyOrder(checks ?? none);
  const others = useMemo(() => checks?.filter(({ id }) => id !== open) ?? null, [checks, open]);
  useVerdicts(store, others, refresh);
  const sent = useSent(store, checks);
  const pane = useRef<HTMLElement>(null);

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const soon = () => {
      clearTimeout(timer);
      timer = setTimeout(refresh, calm);
    };
    const leave = onKept(soon);
    return () => {
      clearTimeout(timer);
      leave();
    };
  }, [refresh]);

  const listed = ordered.length > 0;
  useLayoutEffect(() => {
    const element = pane.current;
    if (!element || !listed) return;
    element.scrollTop = scrollLeftAt;
    return () => {
      scrollLeftAt = element.scrollTop;
    };
  }, [listed]);
  useEffect(() => {
    const element = pane.current;
    const row = element?.querySelector("[aria-current]");
    if (!element || !row || !listed || !open) return;
    // The pane alone: scrollIntoView would move the page, and the check with it.
    const { top, bottom, height } = row.getBoundingClientRect();
    const outside = top < height / 2 || bottom > element.clientHeight;
    if (outside) element.scrollTop += top - (element.clientHeight - height) / 2;
  }, [listed, open]);

  return (
    <aside ref={pane} class="checks-beside" aria-label={messages.checksOnThisPhone}>
      <div class="checks-beside-top">
        <a class="screen-name brand" href={checksHref}>
          {messages.stopfit}
        </a>
        <Button
          icon="plus"
          onClick={() => {
            if (store) beginCheck(store, preferences, checks && checks.length + deleted.length);
          }}
        >
          {messages.newCheck}
        </Button>
      </div>
      {notice && (
        <Notice tone="no" live>
          <p>{inModelUnits(notice)}</p>
        </Notice>
      )}
      {(listed || aside.length > 0) && (
        <CheckGroups
          checks={ordered}
          sent={sent.words}
          open={open}
          onAct={act}
          damaged={(stored) => asideRow({ key: stored.id, name: said(checkName(stored)) })}
        >
          {aside.map(asideRow)}
        </CheckGroups>
      )}
      {dialogs}
      <ButtonLink look="quiet" href={checksHref}>
        {messages.allChecksAndPlaces}
      </ButtonLink>
    </aside>
  );
}
