import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Pool } from "../../../compute/pool.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { buildsToMake, coverageByStop, type Served } from "../../../records/findings/coverage.ts";
import { isOffered, type Pack, stopOf } from "../../../records/pack/pack.ts";
import { stopInFull } from "../../../records/pack/stopFacts.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/desk/findings.ts";
import { Button } from "../../parts/Button.tsx";
import { DeskTable } from "../DeskTable.tsx";
import { startPoolWithPack } from "../startPoolWithPack.ts";
import { countWords } from "../words.ts";
import { Bar } from "./Bar.tsx";
import { percent } from "./findingsWords.ts";
import type { Gathered } from "./gather.ts";

/** Which stops serve the vehicles that were checked, and what to make next. Begun by a tap: it takes time. */
export function Coverage({
  subjects,
  pack,
  unit,
  startPool = startPoolWithPack,
}: {
  subjects: readonly Gathered[];
  pack: Pack;
  unit: LengthUnit;
  startPool?: () => Pool;
}) {
  const [served, setServed] = useState<readonly Served[]>([]);
  const [state, setState] = useState<"none" | "working" | "done">("none");
  const [failed, setFailed] = useState(0);
  const pool = useRef<Pool | null>(null);
  const stopped = useRef(false);
  useEffect(
    () => () => {
      stopped.current = true;
      pool.current?.dispose();
    },
    [],
  );
  const work = async () => {
    stopped.current = false;
    setState("working");
    setServed([]);
    setFailed(0);
    const hands = startPool();
    pool.current = hands;
    const waiting = [...subjects];
    const found: Served[] = [];
    const lane = async (): Promise<void> => {
      for (let next = waiting.shift(); next && !stopped.current; next = waiting.shift()) {
        const done = await hands.run({ kind: "served", key: next.key, text: next.text, pack });
        if (done.kind === "served") found.push(done.served);
        else if (!stopped.current) setFailed((count) => count + 1);
        setServed([...found]);
      }
    };
    await Promise.all(Array.from({ length: hands.size }, lane));
    hands.dispose();
    setState("done");
  };
  const stop = () => {
    stopped.current = true;
    pool.current?.cancel();
  };
  const rows = useMemo(
    () =>
      coverageByStop(
        served,
        pack.stops.filter(isOffered).map(({ id }) => id),
      ),
    [served, pack],
  );
  const unserved = useMemo(
    () => served.filter(({ combinations }) => !combinations.length),
    [served],
  );
  const builds = useMemo(() => buildsToMake(unserved), [unserved]);
  const nameOf = (id: string) => {
    const stop = stopOf(pack, id);
    return stop ? said(stopInFull(stop)) : id;
  };
  return (
    <section class="card" aria-labelledby="coverage-heading">
      <h2 id="coverage-heading">{messages.coverage}</h2>
      <p>{messages.everyStopThatCan}</p>
      <div class="row">
        {state === "working" ? (
          <Button onClick={stop}>{messages.stopWord}</Button>
        ) : (
          <Button onClick={work} disabled={subjects.length === 0}>
            {state === "done"
              ? messages.tryAgain
              : messages.tryOn({ count: countWords(subjects.length, "check") })}
          </Button>
        )}
        {state !== "none" && (
          <p role="status">
            {messages.ofTriedHasFailedSelect({
              served: served.length + failed,
              count: countWords(subjects.length, "check"),
              hasFailed: failed > 0,
              failed,
            })}
          </p>
        )}
      </div>
      {served.length > 0 && (
        <>
          <DeskTable
            caption={messages.shareOfVehiclesThat}
            columns={[messages.stopWord, messages.serves, messages.ofThemWithoutSpacer]}
            rows={rows.map(({ stop: id, count, plain, share }) => ({
              key: id,
              cells: [
                <bdi key="name">{nameOf(id)}</bdi>,
                <Bar key="share" share={share} words={`${percent(share)} (${count})`} />,
                plain,
              ],
            }))}
          />
          <h3>{messages.whatToMakeNext}</h3>
          <p>
            {messages.nothingOfLibraryServes({ unserved: unserved.length, served: served.length })}
          </p>
          {builds.length > 0 && (
            <ol class="stack-close">
              {builds.map(({ heightMm, stiffnessClass, more }) => (
                <li key={`${heightMm} ${stiffnessClass}`}>
                  {messages.highServesMore({
                    heightMm: quantityText({ kind: "length", value: heightMm }, unit),
                    stiffnessClass: quantityText(
                      { kind: "stiffnessClass", value: stiffnessClass },
                      unit,
                    ),
                    more,
                  })}
                </li>
              ))}
            </ol>
          )}
          <p class="small soft">{messages.methodHeightsInSteps}</p>
        </>
      )}
    </section>
  );
}
