import { wrap } from "idb";

/*
 * A page that is left stands still as long as it may be gone back to. What it had begun in the database then
 * stays begun in WebKit, and no other page gets at it (tried in WebKitGTK 2.50; https://webkit.org/b/315804 says
 * so of a process that the phone has put to sleep). So a page lets go of all of it as it is left, and begins it
 * anew where it goes on.
 */

const underWay = new Set<IDBTransaction>();
let timesLeft = 0;
let goesOn: Promise<void> | null = null;

function letGo(): void {
  timesLeft += 1;
  for (const transaction of underWay) {
    try {
      transaction.abort();
    } catch {
      // It is already being written, which needs the page no more.
    }
  }
  underWay.clear();
  // A page that stands still takes no task: this one comes where it goes on, whenever that is.
  goesOn ??= new Promise((resolve) => {
    setTimeout(() => {
      goesOn = null;
      resolve();
    }, 0);
  });
}

globalThis.addEventListener?.("pagehide", letGo);

/** How often the page has been left: what failed meanwhile was not carried out, and can be begun anew. */
export function timesPageLeft(): number {
  return timesLeft;
}

/** Null on a page that has not been left; else once it goes on. */
export function pageGoesOn(): Promise<void> | null {
  return goesOn;
}

/** Follows each transaction that is begun on a database from now on. */
export function followTransactions(database: IDBDatabase): void {
  const kind = Object.getPrototypeOf(database) as IDBDatabase;
  database.transaction = (...given: Parameters<IDBDatabase["transaction"]>) => {
    const transaction = kind.transaction.apply(database, given);
    underWay.add(transaction);
    // Whoever waits for its end hears of it; that nobody does is no error.
    wrap(transaction).done.catch(() => undefined);
    const end = () => underWay.delete(transaction);
    transaction.addEventListener("complete", end);
    transaction.addEventListener("abort", end);
    return transaction;
  };
}
