import type { LayoutKind } from "../../../physics/fitment.ts";
import type { LimitPlace } from "../../../physics/readings/index.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import type { PicturedReading } from "../../drawings/drawnNumbers.ts";
import type { RightWrongProps } from "../../drawings/rightWrong/RightWrong.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { later } from "../../parts/later.tsx";

const RightWrong = later<RightWrongProps>(
  async () => (await import("../../drawings/rightWrong/RightWrong.tsx")).RightWrong,
  { quiet: true },
);

/** The commonest mistake with a reading, in a sentence and in a pair of pictures. */
export function WhatGoesWrong({
  wrong,
  reading,
  kind,
  at,
}: {
  wrong: string;
  reading: PicturedReading | null;
  kind: LayoutKind | undefined;
  at?: LimitPlace | undefined;
}) {
  const wide = window.matchMedia("(min-width: 1000px)").matches;
  const words = (
    <>
      <strong>{messages.whatGoesWrong}</strong> {wrong}
    </>
  );
  if (!reading) return <p class="small soft">{words}</p>;
  return (
    <Disclosure
      summary={
        <span class="wrong-words">
          {words} <span class="wrong-more">{messages.pictures}</span>
        </span>
      }
      open={wide}
    >
      <RightWrong reading={reading} kind={kind ?? "arm"} at={at} />
    </Disclosure>
  );
}
