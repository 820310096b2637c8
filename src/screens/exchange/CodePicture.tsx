import type { NumberedCode } from "../../sharing/codeSeries.ts";
import { drawCode, quietZone } from "../../sharing/qrDrawing.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { FaultNotice } from "../parts/FaultNotice.tsx";

/** One QR code: dark on light in every colour scheme, as readers expect it. */
export function CodePicture({ code, of }: { code: NumberedCode; of: number }) {
  const drawn = drawCode(code.address, code.digits);
  if (!drawn.ok) return <FaultNotice fault={drawn.fault} />;
  const { size, path } = drawn.value;
  const side = size + 2 * quietZone;
  return (
    <svg
      class="code-picture"
      role="img"
      aria-label={of === 1 ? messages.qrCodeOfThis : messages.qrCodeOf({ number: code.number, of })}
      viewBox={`${-quietZone} ${-quietZone} ${side} ${side}`}
      data-modules={side}
    >
      <rect x={-quietZone} y={-quietZone} width={side} height={side} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}
