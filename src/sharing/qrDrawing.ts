import { correction, generate, mode } from "lean-qr";
import { toSvgPath } from "lean-qr/extras/svg";
import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import * as messages from "../words/compiled/sharing.ts";
import { largestCodeVersion } from "./codeSeries.ts";

export interface DrawnCode {
  /** Modules a side, without the quiet zone. */
  readonly size: number;
  /** The dark modules as the outline of an SVG path, one unit a module. */
  readonly path: string;
  isDark(x: number, y: number): boolean;
}

/** Light modules all round that a reader needs (ISO/IEC 18004:2015, 6.3.8). */
export const quietZone = 4;

/** A QR code (ISO/IEC 18004) of a text and the digits after it, each in the mode that suits it. */
export function drawCode(text: string, digits = ""): Outcome<DrawnCode> {
  try {
    const code = generate(
      digits === "" ? mode.ascii(text) : mode.multi(mode.ascii(text), mode.numeric(digits)),
      { minCorrectionLevel: correction.L, maxVersion: largestCodeVersion },
    );
    return succeed({
      size: code.size,
      path: toSvgPath(code),
      isDark: (x, y) => code.get(x, y),
    });
  } catch {
    return fail("codeTooDense", [messages.checkDoesNotFit]);
  }
}
