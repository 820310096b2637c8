import { render } from "@testing-library/preact";
import type { Pool } from "../../../src/compute/pool.ts";
import { poolAnswer } from "../../../src/compute/poolWork.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { newId } from "../../../src/records/check/storedCheck.ts";
import { factsOf } from "../../../src/records/review/submission.ts";
import { DeskPlace } from "../../../src/screens/desk/DeskPlace.tsx";
import type { DeskRoute } from "../../../src/screens/desk/deskRoutes.ts";
import { type DeskStore, openDeskStore } from "../../../src/storage/deskStore.ts";
import { startDeskAssessor } from "../answer/dispatcherAssessor.ts";

/** Works in this thread: happy-dom has no workers. */
export function poolHere(): Pool {
  return {
    size: 1,
    run: poolAnswer,
    cancel: () => undefined,
    dispose: () => undefined,
  };
}

export interface OpenDesk {
  readonly store: DeskStore;
  /** Of the versions kept, in the order given. */
  readonly keys: readonly string[];
  show(route: DeskRoute): void;
}

export function value<Value>(outcome: { ok: true; value: Value } | { ok: false }): Value {
  if (!outcome.ok) throw new Error("it failed");
  return outcome.value;
}

/** A desk of its own with these records kept. */
export async function deskWith(...records: readonly CheckRecord[]): Promise<OpenDesk> {
  const name = `desk ${newId()}`;
  const store = value(await openDeskStore(name));
  for (const record of records) {
    const text = JSON.stringify(record);
    await store.add([{ facts: factsOf(record), text, way: "file", photosLeftOut: 0 }]);
  }
  const keys = records.map((record) => {
    const { checkId, digest } = factsOf(record);
    return `${checkId} ${digest}`;
  });
  const surroundings = { openStore: () => openDeskStore(name), startPool: poolHere };
  return {
    store,
    keys,
    show: (route) => {
      render(
        <DeskPlace
          route={route}
          unit="mm"
          surroundings={surroundings}
          startAssessor={startDeskAssessor}
        />,
      );
    },
  };
}
