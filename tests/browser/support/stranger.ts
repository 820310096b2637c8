import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Page } from "playwright-core";
import { backupLineText } from "../../../src/records/backup/backupLine.ts";
import { drawCode, quietZone } from "../../../src/sharing/qrDrawing.ts";
import { plainPng } from "../../support/pictures.ts";

/** A page of someone else's that posts a form with this file to the app as soon as it is opened. */
export class Stranger {
  private readonly server: Server;

  constructor(site: string, text: string, name: string) {
    this.server = createServer((_, response) => {
      response.setHeader("content-type", "text/html; charset=utf-8");
      response.end(`<!doctype html><form method="post" enctype="multipart/form-data"
        action="${site}receive"><input type="file" name="check"></form><script>
        const files = new DataTransfer();
        files.items.add(new File([${JSON.stringify(text)}], ${JSON.stringify(name)}));
        document.querySelector("input").files = files.files;
        document.querySelector("form").submit();
      </script>`);
    });
  }

  async open(): Promise<string> {
    await new Promise<void>((done) => this.server.listen(0, "127.0.0.1", done));
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}/`;
  }

  async close(): Promise<void> {
    await new Promise((done) => this.server.close(done));
  }
}

/** Has the app think, as it starts, that the device opened it with this file. */
export async function launchWith(page: Page, text: string, name: string): Promise<void> {
  await page.addInitScript(
    ([content, fileName]) => {
      const files = [{ getFile: async () => new File([content], fileName) }];
      Object.defineProperty(globalThis, "launchQueue", {
        configurable: true,
        value: { setConsumer: (take: (params: object) => void) => take({ files }) },
      });
    },
    [text, name] as const,
  );
}

/** A QR code of a text and the digits after it, as a picture. */
export function codePicture(text: string, digits = "") {
  const drawn = drawCode(text, digits);
  if (!drawn.ok) throw new Error(drawn.fault.code);
  const { size, isDark } = drawn.value;
  const pixels = 6;
  const side = (size + 2 * quietZone) * pixels;
  const module = (at: number) => Math.floor(at / pixels) - quietZone;
  const isLight = (x: number, y: number) => {
    const [column, row] = [module(x), module(y)];
    const isInside = Math.min(column, row) >= 0 && Math.max(column, row) < size;
    return !isInside || !isDark(column, row);
  };
  return { name: "code.png", mimeType: "image/png", buffer: plainPng(side, side, [], isLight) };
}

/** All rows of a store, past the app; none where there is no such database or store yet. */
export async function rowsOf<Row>(page: Page, database: string, store: string): Promise<Row[]> {
  return page.evaluate(
    async ([name, storeName]) => {
      const known = await indexedDB.databases();
      if (!known.some((each) => each.name === name)) return [];
      return new Promise<unknown[]>((done, failed) => {
        const opening = indexedDB.open(name);
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const opened = opening.result;
          const end = (rows: unknown[]) => {
            opened.close();
            done(rows);
          };
          if (!opened.objectStoreNames.contains(storeName)) return end([]);
          const rows = opened.transaction(storeName).objectStore(storeName).getAll();
          rows.onsuccess = () => end(rows.result);
          rows.onerror = () => failed(rows.error);
        };
      });
    },
    [database, store] as const,
  ) as Promise<Row[]>;
}

/** Puts these fields into every row of a store, past the app. */
export async function changeRows(
  page: Page,
  database: string,
  store: string,
  fields: object,
): Promise<void> {
  await page.evaluate(
    ([name, storeName, change]) =>
      new Promise<void>((done, failed) => {
        const opening = indexedDB.open(name);
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction(storeName, "readwrite");
          const rows = transaction.objectStore(storeName);
          const all = rows.getAll();
          all.onsuccess = () => {
            for (const row of all.result) rows.put({ ...row, ...change });
          };
          transaction.onabort = () => failed(transaction.error);
          transaction.oncomplete = () => {
            opening.result.close();
            done();
          };
        };
      }),
    [database, store, fields] as const,
  );
}

/** A backup as a file: the lines between its header and its end. */
export function backupFile(...lines: readonly object[]): {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
} {
  return {
    name: "stopfit-backup.txt",
    mimeType: "text/plain",
    buffer: Buffer.from(backupText(...lines)),
  };
}

export function backupText(...lines: readonly object[]): string {
  return [
    backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" }),
    ...lines.map((line) => `${JSON.stringify(line)}\n`),
    backupLineText({ kind: "end", lines: lines.length }),
  ].join("");
}

export function jsonFile(name: string, value: unknown) {
  const text = typeof value === "string" ? value : JSON.stringify(value);
  return { name, mimeType: "application/json", buffer: Buffer.from(text) };
}
