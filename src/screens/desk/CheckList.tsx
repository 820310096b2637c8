import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { DeskCheck } from "../../records/review/decision.ts";
import type { Listed } from "../../records/review/listedSubmission.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { jobWords } from "../job/jobWords.ts";
import { RowBoundary } from "../parts/RowBoundary.tsx";
import { takeOrGiveBack, toldOf } from "./shared/rowWords.ts";
import type { Shared } from "./shared/useShared.ts";
import { ageWords, countWords, deskStateWords, verdictShort, whoWords } from "./words.ts";
import "./checkList.css";

/** Rows drawn above and below those in sight. */
const spare = 6;

interface CheckListProps {
  readonly checks: readonly DeskCheck[];
  /** The check the keys are at, by its id. */
  readonly at: string | null;
  onAt(checkId: string): void;
  onOpen(check: DeskCheck): void;
  readonly shared?: Shared | null;
}

function jobText({ job = "", jobNumber }: Listed): string {
  return jobWords({ label: job, ...(jobNumber !== undefined && { number: jobNumber }) });
}

/** Any number of checks, of which only the rows in sight are drawn. Arrows, Enter, Home, End, Page keys. */
export function CheckList({ checks, at, onAt, onOpen, shared = null }: CheckListProps) {
  const box = useRef<HTMLDivElement>(null);
  const [scrolled, setScrolled] = useState(0);
  const [size, setSize] = useState({ height: 600, row: 56 });
  const index = Math.max(
    0,
    checks.findIndex(({ latest }) => latest.checkId === at),
  );
  const first = Math.max(0, Math.floor(scrolled / size.row) - spare);
  const last = Math.min(checks.length, Math.ceil((scrolled + size.height) / size.row) + spare);

  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = () => {
      const row = Number.parseFloat(getComputedStyle(element).getPropertyValue("--row")) || 56;
      setSize({ height: element.clientHeight || 600, row });
    };
    measure();
    if (typeof ResizeObserver === "undefined") return;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  const show = (row: number) => {
    const element = box.current;
    if (!element) return;
    const top = row * size.row;
    if (top < element.scrollTop) element.scrollTop = top;
    else if (top + size.row > element.scrollTop + element.clientHeight) {
      element.scrollTop = top + size.row - element.clientHeight;
    }
    setScrolled(element.scrollTop);
  };

  useEffect(() => {
    if (index > 0) show(index);
  }, [size.row]);

  const go = (row: number) => {
    const check = checks[Math.min(checks.length - 1, Math.max(0, row))];
    if (!check) return;
    onAt(check.latest.checkId);
    show(checks.indexOf(check));
  };
  const page = Math.max(1, Math.floor(size.height / size.row) - 1);
  const steps: { readonly [key: string]: number } = {
    ArrowDown: index + 1,
    ArrowUp: index - 1,
    PageDown: index + page,
    PageUp: index - page,
    Home: 0,
    End: checks.length - 1,
  };

  const current = checks[index];
  const isDrawn = index >= first && index < last;
  return (
    <div
      ref={box}
      class="desk-list"
      role="listbox"
      tabIndex={0}
      aria-label={messages.checks2({ checks: checks.length })}
      aria-activedescendant={current && isDrawn ? optionId(current) : undefined}
      onScroll={(event) => setScrolled(event.currentTarget.scrollTop)}
      onKeyDown={(event) => {
        const to = steps[event.key];
        if (to !== undefined) {
          event.preventDefault();
          go(to);
        } else if (event.key === "t" && current && shared?.state) {
          event.preventDefault();
          takeOrGiveBack(shared, current.latest.checkId);
        } else if (event.key === "Enter" && current) {
          event.preventDefault();
          onOpen(current);
        }
      }}
    >
      <div
        class="desk-list-all"
        role="presentation"
        style={{ height: `${checks.length * size.row}px` }}
      >
        {checks.slice(first, last).map((check, place) => (
          <RowBoundary
            key={check.latest.checkId}
            instead={<BrokenRow top={(first + place) * size.row} />}
          >
            <Row
              check={check}
              place={first + place}
              count={checks.length}
              top={(first + place) * size.row}
              selected={check === current}
              told={shared && toldOf(shared, check)}
              onOpen={() => {
                onAt(check.latest.checkId);
                onOpen(check);
              }}
            />
          </RowBoundary>
        ))}
      </div>
    </div>
  );
}

function optionId({ latest }: DeskCheck): string {
  return `check-${latest.checkId}`;
}

/** In the place of a row that can't be shown. */
function BrokenRow({ top }: { top: number }) {
  return (
    <div class="desk-row" role="presentation" style={{ transform: `translateY(${top}px)` }}>
      <span class="desk-mark">
        <StateMark state="no" size={28} label="" />
        <span>{messages.damaged}</span>
      </span>
      <span class="desk-vehicle">{messages.thisCheckCantBe}</span>
    </div>
  );
}

function Row({
  check,
  place,
  count,
  top,
  selected,
  told,
  onOpen,
}: {
  check: DeskCheck;
  place: number;
  count: number;
  top: number;
  selected: boolean;
  /** What the shared desk adds. */
  told: string | null;
  onOpen: () => void;
}) {
  const { latest, versions, state, fromBackup } = check;
  const { computed } = latest;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the list itself takes the keys
    // biome-ignore lint/a11y/useFocusableInteractive: the list keeps the focus
    <div
      id={optionId(check)}
      role="option"
      class="desk-row"
      aria-selected={selected}
      aria-posinset={place + 1}
      aria-setsize={count}
      style={{ transform: `translateY(${top}px)` }}
      onClick={onOpen}
    >
      <span class="desk-mark">
        {computed ? (
          <StateMark state={computed.verdict} size={28} label="" />
        ) : (
          <span class="check-open-mark" aria-hidden="true" />
        )}
        <span>{computed ? verdictShort[computed.verdict] : messages.notComputedYet}</span>
      </span>
      <span class="desk-vehicle">
        <bdi>
          <strong>{latest.vehicle}</strong>
        </bdi>
        <span class="small soft">
          {computed && computed.odd > 0 && `${countWords(computed.odd, "oddReading")} · `}
          {(latest.job || latest.jobNumber) && (
            <>
              <bdi>{jobText(latest)}</bdi> ·{" "}
            </>
          )}
          <bdi>{latest.stop}</bdi>
          {versions.length > 1 && messages.version({ versions: versions.length })}
        </span>
      </span>
      <span class="desk-axle">{latest.axle === "front" ? messages.front : messages.rear}</span>
      <bdi class="desk-who">{whoWords(latest)}</bdi>
      <span class="desk-age">{ageWords(latest.receivedAt)}</span>
      <span class={`desk-state desk-state-${state}`}>
        {deskStateWords[state]}
        {fromBackup && messages.fromBackup}
        {told && <span class="small"> {told}</span>}
      </span>
    </div>
  );
}
