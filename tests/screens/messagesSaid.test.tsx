import { render } from "@testing-library/preact";
import { expect, it } from "vitest";
import { length, type Message } from "../../src/physics/sentence.ts";
import { said } from "../../src/saying/texts.ts";
import { noNameYet } from "../../src/words/compiled/records/check.ts";

const shown = (part: Message | string | object | readonly object[]) => () =>
  render(<p>{part as string}</p>);

it("a page that is given words which nobody has said fails its test", () => {
  expect(shown(said(noNameYet))).not.toThrow();
  expect(shown(noNameYet)).toThrow("p was given words that are not said: children");
  expect(shown([noNameYet, length(3)])).toThrow("not said");
  expect(shown(length(3))).toThrow("not said");
  expect(shown(`${{ ...noNameYet }}`)).toThrow("not said");
  expect(() => render(<img alt={noNameYet as unknown as string} />)).toThrow("img was given");
});
