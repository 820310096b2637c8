import { useId } from "preact/hooks";
import type { AngleKind } from "../../../sensors/phoneAngle.ts";
import * as messages from "../../../words/compiled/screens/check/tilt.ts";
import type { TiltTask } from "./tiltTask.ts";
import "../../drawings/drawings.css";

/** A phone 34 wide and 72 long, its middle at (0, 0), its top up; the band marks the top end. */
function PhoneShape({ words = true }: { readonly words?: boolean }) {
  return (
    <g>
      <rect class="phone" x={-17} y={-36} width={34} height={72} rx={6} />
      <rect class="phone-screen" x={-12.5} y={-27} width={25} height={56} rx={2} />
      <rect class="phone-top" x={-17} y={-36} width={34} height={7} rx={3} />
      {words && (
        <text class="phone-words" y={-42} text-anchor="middle">
          {messages.topWord}
        </text>
      )}
    </g>
  );
}

const words: { readonly [Kind in AngleKind]: string } = {
  line: messages.phoneStandsOnIts,
  lean: messages.phoneStandsUprightWith,
};

/** How to hold the phone for this reading; the wheel is where it is as you look at it. */
export function HoldPicture({
  task,
  brief,
}: {
  readonly task: TiltTask;
  /** Without the words under it: they were read before. */
  readonly brief: boolean;
}) {
  const id = useId();
  const wheelAtRight = task.pivotAt !== "right";
  const mirrored = wheelAtRight ? "" : "translate(328 0) scale(-1 1)";
  const seen = (x: number) => (wheelAtRight ? x : 328 - x);
  return (
    <>
      <svg
        class="drawing hold-picture"
        viewBox="0 0 328 132"
        role="img"
        aria-labelledby={`${id}-title`}
      >
        <title id={`${id}-title`}>{words[task.kind]}</title>
        {task.kind === "line" ? (
          <>
            <g transform={mirrored}>
              <rect class="context solid" x={272} y={16} width={44} height={108} rx={12} />
              <path class="part" d="M40 62 262 93" />
              <path class="part" d="M37 72 259 103" />
              <circle class="part solid" cx={38} cy={67} r={9} />
              <circle class="part solid" cx={261} cy={98} r={7} />
              <g transform="translate(150 63.5) rotate(97.9)">
                <PhoneShape words={false} />
              </g>
              <path class="turn" d="M196 54 232 59m-10-7 10 7-12 4" />
            </g>
            <text class="phone-words" x={seen(150)} y={38} text-anchor="middle">
              {messages.topTowardWheel}
            </text>
            <text class="caption" x={seen(40)} y={96} text-anchor="middle">
              {messages.pivot}
            </text>
          </>
        ) : (
          <>
            <g transform={mirrored}>
              <path class="context" d="M60 14h170v14H60Z" />
              <path class="part" d="M40 112 262 118" />
              <circle class="part solid" cx={40} cy={112} r={9} />
              <g transform="translate(136 72) rotate(-8)">
                <path
                  class="stop"
                  d="M-22-42H22C26-30 24-22 16-18c8 3 8 12-1 16 6 6 5 14-1 18 4 8 1 16-4 20h-20c-5-4-8-12-4-20-6-4-7-12-1-18-9-4-9-13-1-16-8-4-10-12-6-24Z"
                />
                <g transform="translate(42 -4)">
                  <PhoneShape words={false} />
                </g>
              </g>
            </g>
            <text
              class="phone-words"
              x={seen(200)}
              y={52}
              text-anchor={wheelAtRight ? "start" : "end"}
            >
              {messages.topUp}
            </text>
            {task.pivotAt !== null && (
              <text class="caption" x={seen(40)} y={96} text-anchor="middle">
                {messages.pivot}
              </text>
            )}
          </>
        )}
      </svg>
      {!brief && (
        <p class="small">
          {task.kind === "line"
            ? messages.longEdgeAlongLine
            : messages.lookAtItAlong({
                noPivotAt: task.pivotAt === null,
                pivotAt: task.pivotAt ?? undefined,
              })}
        </p>
      )}
    </>
  );
}

/** Turning the phone round on the same edge. */
export function TurnPicture({ kind }: { readonly kind: AngleKind }) {
  const id = useId();
  const along = kind === "line" ? 90 : 0;
  const y = kind === "line" ? 79 : 60;
  return (
    <svg
      class="drawing hold-picture"
      viewBox="0 0 328 116"
      role="img"
      aria-labelledby={`${id}-title`}
    >
      <title id={`${id}-title`}>
        {kind === "line" ? messages.phoneStandsOnItsLong : messages.phoneStandsUprightOn}
      </title>
      <path class="part" d="M16 97H312" />
      <path class="context" d="M40 97v16M288 97v16" />
      <g transform={`translate(86 ${y}) rotate(${along})`}>
        <PhoneShape words={false} />
      </g>
      <path class="turn" d="M140 58c14-24 34-24 48 0m-12-5 12 5 3-13" />
      <g transform={`translate(242 ${y}) rotate(${-along})`}>
        <rect class="phone" x={-17} y={-36} width={34} height={72} rx={6} />
        <rect class="phone-top" x={-17} y={-36} width={34} height={7} rx={3} />
        <circle class="phone-top" cx={-8} cy={-22} r={3.4} />
      </g>
      <text class="caption" x={86} y={14} text-anchor="middle">
        {messages.first}
      </text>
      <text class="caption" x={242} y={14} text-anchor="middle">
        {messages.secondFacingAway}
      </text>
    </svg>
  );
}
