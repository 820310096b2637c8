import { decode } from "@nats-io/jwt";
import { beforeAll, describe, expect, it } from "vitest";
import { deskAddressText, readDeskAddress } from "../../src/engine/address.ts";
import { newPhoneKey, personLogin, phoneLogin } from "../../src/engine/login.ts";
import {
  buildAddress,
  type DeskState,
  newDeskState,
  nodeConfigs,
  withNewSenders,
  withPerson,
  withTakenBack,
} from "../../src/server/deskState.ts";
import { streamPlans } from "../../src/server/streamPlans.ts";
import { opened } from "../support/engine/engineBench.ts";

const ports = { clientPort: 4222, webSocketPort: 4443, clusterPort: 6222 };
const tls = { certificate: "/etc/ssl/desk.pem", key: "/etc/ssl/desk.key" };
const three = ["a", "b", "c"].map((name, place) => ({
  name,
  host: `10.0.0.${place + 1}`,
  ...ports,
  folder: `/var/lib/${name}`,
  tls,
  origins: ["https://app.example"],
}));
const url = "wss://desk.example:4443";

let state: DeskState;
beforeAll(async () => {
  state = await newDeskState({ url, nodes: three });
});

describe("configuration of the nodes", () => {
  it("three know each other by a secret, take browsers by TLS only, and from the named origin", async () => {
    const configs = await nodeConfigs(state);
    expect([...configs.keys()]).toEqual(["a", "b", "c"]);
    const b = configs.get("b") ?? "";
    expect(b).toContain('tls { cert_file: "/etc/ssl/desk.pem", key_file: "/etc/ssl/desk.key" }');
    expect(b).not.toContain("no_tls");
    expect(b).toContain('allowed_origins: ["https://app.example"]');
    const routes = /routes: \[(.*)\]/.exec(b)?.[1] ?? "";
    expect(routes.split(", ").map((each) => each.replace(/desk:[0-9a-f]{48}@/, ""))).toEqual([
      '"nats-route://10.0.0.1:6222"',
      '"nats-route://10.0.0.3:6222"',
    ]);
    expect(b).not.toContain(state.keys.account);
    expect(b).not.toContain(state.keys.people);
    expect(b).not.toContain(state.keys.operator);
  });

  it("one alone has no cluster", async () => {
    expect((await nodeConfigs({ ...state, nodes: three.slice(0, 1) })).get("a")).not.toContain(
      "cluster {",
    );
  });

  it("every stream but that of names and photos refuses deletion, and on three nodes has three copies", () => {
    for (const plan of streamPlans(3)) {
      if (plan.name === "KV_HANDS") continue;
      expect(plan).toMatchObject({
        num_replicas: 3,
        storage: "file",
        discard: "new",
        deny_delete: true,
        deny_purge: plan.name !== "PERSONAL",
      });
      expect(plan.max_age === undefined).toBe(plan.name !== "PERSONAL");
    }
    expect(streamPlans(1).every(({ num_replicas }) => num_replicas === 1)).toBe(true);
  });
});

describe("credentials", () => {
  it("a person has one at a time, by a name that can stand in a subject", async () => {
    const made = await withPerson(state, "ines");
    if ("trouble" in made) throw new Error(made.trouble);
    expect(opened(await personLogin(made.credential)).name).toBe("ines");
    expect(await withPerson(made.state, "ines")).toHaveProperty("trouble");
    expect(await withPerson(made.state, "in.es")).toHaveProperty("trouble");
    expect(await withPerson(made.state, "*")).toHaveProperty("trouble");
    const back = withTakenBack(made.state, "ines");
    if (back === null) throw new Error("not taken back");
    expect(Object.keys(back.revoked)).toEqual([back.people[0]?.publicKey]);
    expect(withTakenBack(back, "ines")).toBeNull();
    expect(await withPerson(back, "ines")).toHaveProperty("credential");
  });

  it("a phone's token names no permission of its own and is signed by the senders' key", async () => {
    const address = opened(readDeskAddress(buildAddress(state)));
    const key = newPhoneKey();
    const login = opened(await phoneLogin(key, address));
    const answer = login.authenticator("nonce") as { jwt: string };
    const claims = decode<Record<string, unknown>>(answer.jwt);
    expect(claims.sub).toBe(key.publicKey);
    expect(Object.keys(claims.nats).sort()).toEqual(["issuer_account", "type", "version"]);
    expect(buildAddress(withNewSenders(state))).not.toBe(buildAddress(state));
  });
});

describe("the address that a build is given", () => {
  it("comes back as it was, and only by TLS but on this machine", async () => {
    const text = buildAddress(state);
    expect(deskAddressText(opened(readDeskAddress(text)))).toBe(text);
    const local = text.replace("wss://desk.example:4443", "ws://127.0.0.1:4443");
    expect(readDeskAddress(local).ok).toBe(true);
    for (const wrong of [
      "",
      "desk.example",
      "https://desk.example#A.S",
      text.replace("wss:", "ws:"),
      text.replace(/#.*/, ""),
      text.slice(0, -1),
      `${text}.more`,
    ]) {
      expect(readDeskAddress(wrong)).toMatchObject({ ok: false, fault: { code: "deskAddress" } });
    }
  });
});
