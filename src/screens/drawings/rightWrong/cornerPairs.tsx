import type { ComponentChildren } from "preact";
import * as messages from "../../../words/compiled/screens/drawings/rightWrong.ts";
import type { Pair } from "./pair.ts";
import { Ground, Rubber, Tape } from "./shapes.tsx";

/** A leaning stop over its pad. */
function StopOverPad({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M10 4h130v12H10Z" />
      <g transform="rotate(22 80 18)">
        <path class="part plate" d="M62 18h36" />
        <Rubber x={80} y={19} height={36} />
        <path class="part plate" d="M58 92h44" />
        <path class="context dashed" d="M80 56v36" />
      </g>
      {children}
    </>
  );
}

export const gapToPad: Pair = {
  right: {
    words: messages.alongStopsOwnAxis,
    picture: (
      <StopOverPad>
        <g transform="rotate(22 80 18)">
          <Tape from={{ x: 80, y: 55 }} to={{ x: 80, y: 91 }} />
        </g>
      </StopOverPad>
    ),
  },
  wrong: {
    words: messages.straightUpAndDown,
    picture: (
      <StopOverPad>
        <Tape from={{ x: 66, y: 53 }} to={{ x: 66, y: 83 }} />
      </StopOverPad>
    ),
  },
};

/** A rod out of its damper's body, with a stop on it and, where it hangs down, a dust boot. */
function RodWithBoot({ boot, children }: { boot: boolean; children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M30 2h90v8H30Z" />
      <path class="part" d="M73 10v56M77 10v56" />
      <path class="part solid" d="M60 66h30v32H60Z" />
      <Rubber x={75} y={11} height={28} />
      {boot ? (
        <path class="boot" d="M55 12h40l4 7-4 7 4 7-4 7 4 7-4 7H55l-4-7 4-7-4-7 4-7-4-7Z" />
      ) : (
        <path class="boot" d="M53 11h44l3 3-3 3 3 3-3 3H53l-3-3 3-3-3-3Z" />
      )}
      {children}
    </>
  );
}

export const gapOnRod: Pair = {
  right: {
    words: messages.bootSlidUpRubbers,
    picture: (
      <RodWithBoot boot={false}>
        <Tape from={{ x: 75, y: 39 }} to={{ x: 75, y: 66 }} />
      </RodWithBoot>
    ),
  },
  wrong: {
    words: messages.fromBootsEndRubber,
    picture: (
      <RodWithBoot boot>
        <Tape from={{ x: 75, y: 54 }} to={{ x: 75, y: 66 }} />
      </RodWithBoot>
    ),
  },
};

export const damperTravel: Pair = {
  right: {
    words: messages.bootSlidUpBody,
    picture: (
      <RodWithBoot boot={false}>
        <Tape from={{ x: 104, y: 66 }} to={{ x: 104, y: 10 }} />
      </RodWithBoot>
    ),
  },
  wrong: {
    words: messages.onlyAsFarAs,
    picture: (
      <RodWithBoot boot>
        <Tape from={{ x: 104, y: 66 }} to={{ x: 104, y: 54 }} />
      </RodWithBoot>
    ),
  },
};

/** A wheel from its side under its arch. */
function WheelUnderArch({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context" d="M8 60C24 60 28 16 75 16s51 44 67 44" />
      <circle class="context solid" cx={75} cy={62} r={30} />
      <circle class="context" cx={75} cy={62} r={19} />
      <circle class="part solid" cx={75} cy={62} r={4} />
      {children}
    </>
  );
}

export const rideHeight: Pair = {
  right: {
    words: messages.fromWheelCenterStraight,
    picture: (
      <>
        <Ground y={93} />
        <WheelUnderArch>
          <Tape from={{ x: 75, y: 62 }} to={{ x: 75, y: 16 }} />
        </WheelUnderArch>
      </>
    ),
  },
  wrong: {
    words: messages.tapeLeaningFloorTilted,
    picture: (
      <>
        <path class="context" d="M4 84 146 100" />
        <g transform="rotate(6.4 75 92)">
          <WheelUnderArch>
            <Tape from={{ x: 75, y: 62 }} to={{ x: 52, y: 21 }} />
          </WheelUnderArch>
        </g>
      </>
    ),
  },
};

/** A vehicle from its side with a scale under its front wheel. */
function OnScale({ tilt, blocks }: { tilt: number; blocks: boolean }) {
  return (
    <>
      <Ground y={92} />
      <g transform={`rotate(${tilt} 112 84)`}>
        <path class="part solid" d="M14 62V46l22-5 14-17h42l20 18 22 6v14Z" />
        <circle class="part solid" cx={40} cy={66} r={15} />
        <circle class="part solid" cx={110} cy={66} r={15} />
      </g>
      <path class="tape-fill" d="M22 82h36v10H22Z" />
      {blocks && <path class="context solid" d="M93 82h34v10H93Z" />}
    </>
  );
}

export const cornerMass: Pair = {
  right: {
    words: messages.scaleUnderThisTire,
    picture: <OnScale tilt={0} blocks />,
  },
  wrong: {
    words: messages.oneWheelLiftedBy,
    picture: (
      <>
        <Ground y={92} />
        <g transform="rotate(8 110 78)">
          <path class="part solid" d="M14 72V56l22-5 14-17h42l20 18 22 6v14Z" />
          <circle class="part solid" cx={40} cy={76} r={15} />
          <circle class="part solid" cx={110} cy={77} r={15} />
        </g>
        <path class="tape-fill" d="M22 82h36v10H22Z" />
      </>
    ),
  },
};

/** A stop on its steel plate with its stud, upside down on a bench. */
function OnBench({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context" d="M8 92h134" />
      <path class="part" d="M72 92v-12M78 92v-12" />
      <path class="part solid" d="M48 72h54v8H48Z" />
      <g transform="rotate(180 75 72)">
        <Rubber x={75} y={73} height={56} />
      </g>
      {children}
    </>
  );
}

export const freeHeight: Pair = {
  right: {
    words: messages.rubberAloneSeatTo,
    picture: (
      <OnBench>
        <Tape from={{ x: 114, y: 72 }} to={{ x: 114, y: 15 }} />
      </OnBench>
    ),
  },
  wrong: {
    words: messages.withPlateAndStud,
    picture: (
      <OnBench>
        <Tape from={{ x: 114, y: 92 }} to={{ x: 114, y: 15 }} />
      </OnBench>
    ),
  },
};

export const usableCompression: Pair = {
  right: {
    words: messages.freeHeightLessHeight,
    picture: (
      <>
        <path class="context" d="M8 92h134" />
        <g transform="rotate(180 44 92)">
          <Rubber x={44} y={92} height={64} />
        </g>
        <path class="stop" d="M82 92c-8-8-6-20 2-24h46c8 4 10 16 2 24Z" />
        <path class="part plate" d="M80 67h54" />
        <path class="context dashed" d="M44 28h64M108 67V28" />
        <Tape from={{ x: 107, y: 65 }} to={{ x: 107, y: 28 }} />
      </>
    ),
  },
  wrong: {
    words: messages.wholeFreeHeightNo,
    picture: (
      <>
        <path class="context" d="M8 92h134" />
        <g transform="rotate(180 60 92)">
          <Rubber x={60} y={92} height={64} />
        </g>
        <Tape from={{ x: 100, y: 92 }} to={{ x: 100, y: 28 }} />
      </>
    ),
  },
};
