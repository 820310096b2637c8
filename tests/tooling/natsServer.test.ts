import { expect, it } from "vitest";
import { findNatsServer } from "../../src/tooling/natsServer.mjs";

it("the program that is named goes before those in usual places; one that can't run is none", () => {
  const places = ["/a/nats-server", "/b/nats-server"];
  const runs = (path: string) => path !== "/a/nats-server";
  expect(findNatsServer({}, places, runs)).toBe("/b/nats-server");
  expect(findNatsServer({ NATS_SERVER_PATH: "/c" }, places, runs)).toBe("/c");
  expect(findNatsServer({ NATS_SERVER_PATH: "/a/nats-server" }, places, runs)).toBeNull();
  expect(findNatsServer({}, places, () => false)).toBeNull();
});
