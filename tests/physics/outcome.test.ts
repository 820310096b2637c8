import { expect, it } from "vitest";
import { fail, succeed } from "../../src/physics/outcome.ts";

it("an outcome is a value, or a fault that names a reading only where one is to blame", () => {
  expect(succeed(3)).toStrictEqual({ ok: true, value: 3 });
  expect(fail("any", ["Wrong."])).toStrictEqual({
    ok: false,
    fault: { code: "any", sentence: ["Wrong."] },
  });
  expect(fail("any", ["Wrong."], "left.gap")).toStrictEqual({
    ok: false,
    fault: { code: "any", sentence: ["Wrong."], reading: "left.gap" },
  });
});
