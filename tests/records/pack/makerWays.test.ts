import { describe, expect, it } from "vitest";
import { makerWays } from "../../../src/records/pack/makerWays.ts";

const none = { mail: null, phone: null, post: null };

describe("how a maker is reached", () => {
  it.each([
    [{}, none],
    [{ address: "4 Halden Lane, Marlow Cross" }, { ...none, post: "4 Halden Lane, Marlow Cross" }],
    [
      { address: "4 Halden Lane", contact: "parts@haldenlane.example" },
      { ...none, mail: "parts@haldenlane.example", post: "4 Halden Lane" },
    ],
    [
      { contact: "+1 555 010 0199; parts@haldenlane.example" },
      { ...none, mail: "parts@haldenlane.example", phone: "+1 555 010 0199" },
    ],
    [
      { contact: "(555) 010-0199 parts@haldenlane.example" },
      { ...none, mail: "parts@haldenlane.example", phone: "(555) 010-0199" },
    ],
    [{ address: "desk@haldenlane.example" }, { ...none, mail: "desk@haldenlane.example" }],
    [{ contact: "ask at the counter" }, none],
  ])("%j", (maker, ways) => {
    expect(makerWays(maker)).toEqual(ways);
  });
});
