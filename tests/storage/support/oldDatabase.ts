import { readFileSync } from "node:fs";

interface KeptStore {
  readonly keyPath: string | string[];
  readonly indexes: { readonly [name: string]: string };
  readonly rows: readonly unknown[];
}

/** A database as an earlier version of Stopfit wrote it, to the last field. */
export interface OldDatabase {
  readonly name: string;
  readonly version: number;
  readonly stores: { readonly [name: string]: KeptStore };
}

/** `which`: "checks-1" is version 1 of the database of checks, "desk-2" version 2 of the desk's. */
export function oldDatabase(which: string): OldDatabase {
  const file = `tests/storage/versions/${which}.json`;
  return JSON.parse(readFileSync(file, "utf8")) as OldDatabase;
}

/** Puts it into the browser's storage, as that version had left it. */
export function putOldDatabase({ name, version, stores }: OldDatabase): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name, version);
    opening.onerror = () => reject(opening.error);
    opening.onupgradeneeded = () => {
      for (const [storeName, { keyPath, indexes, rows }] of Object.entries(stores)) {
        const store = opening.result.createObjectStore(storeName, { keyPath });
        for (const [index, path] of Object.entries(indexes)) store.createIndex(index, path);
        for (const row of rows) store.put(row);
      }
    };
    opening.onsuccess = () => {
      opening.result.close();
      resolve();
    };
  });
}

/** What a store of the browser's database holds now. */
export function rowsOf(name: string, store: string): Promise<unknown[]> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const database = opening.result;
      const request = database.transaction(store).objectStore(store).getAll();
      request.onerror = () => reject(request.error);
      request.onsuccess = () => {
        database.close();
        resolve(request.result);
      };
    };
  });
}

/** The stores of the browser's database as it is now, with what their rows are found by. */
export function storesOf(name: string): Promise<{ readonly [store: string]: object }> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const database = opening.result;
      const names = [...database.objectStoreNames];
      const transaction = database.transaction(names);
      const found = names.map((storeName) => {
        const { keyPath, autoIncrement, indexNames } = transaction.objectStore(storeName);
        const indexes = [...indexNames].map((index) => {
          const { keyPath: path, unique } = transaction.objectStore(storeName).index(index);
          return [index, path, unique];
        });
        return [storeName, { keyPath, autoIncrement, indexes }];
      });
      database.close();
      resolve(Object.fromEntries(found));
    };
  });
}
