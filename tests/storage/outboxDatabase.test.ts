import "fake-indexeddb/auto";
import { expect, it } from "vitest";
import { outboxDatabaseName } from "../../src/storage/outboxDatabase.ts";
import { openOutbox } from "../../src/storage/outboxStore.ts";
import { storesOf } from "./support/oldDatabase.ts";
import { closedLater, freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

it("an outbox has the stores that phones have already: a step that was shipped never changes", async () => {
  closedLater(value(await openOutbox()));
  const byCheck = [["checkId", "checkId", false]];
  expect(await storesOf(outboxDatabaseName)).toEqual({
    replies: { keyPath: "id", autoIncrement: false, indexes: byCheck },
    settings: { keyPath: "key", autoIncrement: false, indexes: [] },
    versions: { keyPath: "hash", autoIncrement: false, indexes: byCheck },
    waiting: { keyPath: "place", autoIncrement: true, indexes: byCheck },
  });
});
