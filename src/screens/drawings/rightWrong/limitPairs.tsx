import type { ComponentChildren } from "preact";
import * as messages from "../../../words/compiled/screens/drawings/rightWrong.ts";
import type { Pair } from "./pair.ts";
import { Coils, Rubber, Tape, Tyre } from "./shapes.tsx";

/** A tyre under the edge of its arch. */
function TyreUnderArch({ turned, children }: { turned: boolean; children: ComponentChildren }) {
  return (
    <>
      <path class="part" d="M10 8h82c26 0 36 8 38 30" />
      <path class="part" d="M104 38h26" />
      <Tyre x={turned ? 88 : 76} y={78} width={36} height={62} turn={turned ? 24 : 0} />
      {children}
    </>
  );
}

export const tyreClearance: Pair = {
  right: {
    words: messages.atFullLockToo,
    picture: (
      <TyreUnderArch turned>
        <Tape from={{ x: 110, y: 54 }} to={{ x: 110, y: 38 }} />
      </TyreUnderArch>
    ),
  },
  wrong: {
    words: messages.onlyStraightAheadMore,
    picture: (
      <TyreUnderArch turned={false}>
        <Tape from={{ x: 76, y: 47 }} to={{ x: 76, y: 8 }} />
      </TyreUnderArch>
    ),
  },
};

/** Coils, two of which touch already. */
function ClosedCoils({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M30 4h90v6H30ZM30 90h90v6H30Z" />
      {[14, 32, 50, 68, 76, 84].map((y) => (
        <rect key={y} class="part solid" x={46} y={y - 4} width={58} height={8} rx={4} />
      ))}
      <Coils x={75} top={14} bottom={68} half={28} turns={3} />
      {children}
    </>
  );
}

const clearSpaces = (
  <ClosedCoils>
    <Tape from={{ x: 120, y: 18 }} to={{ x: 120, y: 28 }} />
    <Tape from={{ x: 120, y: 36 }} to={{ x: 120, y: 46 }} />
    <Tape from={{ x: 120, y: 54 }} to={{ x: 120, y: 64 }} />
  </ClosedCoils>
);
const wholeSpring = (
  <ClosedCoils>
    <Tape from={{ x: 120, y: 14 }} to={{ x: 120, y: 84 }} />
  </ClosedCoils>
);

export const springTravel: Pair = {
  right: { words: messages.onlyClearSpacesAdded, picture: clearSpaces },
  wrong: { words: messages.coilsThatTouchAlready, picture: wholeSpring },
};

/** A moving part under a brake line, and the frame above. */
function LineBelowFrame({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M8 6h134v18H8Z" />
      <circle class="part solid" cx={72} cy={42} r={4} />
      <path class="context" d="M72 38V24" />
      <path class="part solid" d="M20 84h110l-6 10H26Z" />
      {children}
    </>
  );
}

export const metalClearance: Pair = {
  right: {
    words: messages.toNearestThingBrake,
    picture: (
      <LineBelowFrame>
        <Tape from={{ x: 72, y: 84 }} to={{ x: 72, y: 46 }} />
      </LineBelowFrame>
    ),
  },
  wrong: {
    words: messages.pastLineToFrame,
    picture: (
      <LineBelowFrame>
        <Tape from={{ x: 100, y: 84 }} to={{ x: 100, y: 24 }} />
      </LineBelowFrame>
    ),
  },
};

/** A page of notes beside what would touch. */
function NotesPage({ written }: { written: boolean }) {
  return (
    <>
      <path class="context solid" d="M8 8h54v16H8Z" />
      <path class="part solid" d="M14 70h44l-4 14H18Z" />
      <Tape from={{ x: 36, y: 70 }} to={{ x: 36, y: 24 }} />
      <path class="part solid" d="M84 12h40l12 12v66H84Z" />
      <path class="part" d="M124 12v12h12" />
      {written ? (
        <path class="tape" d="M92 38h34M92 50h34M92 62h22" />
      ) : (
        <path class="context dashed" d="M92 38h34M92 50h34M92 62h22" />
      )}
    </>
  );
}

export const otherClearance: Pair = {
  right: { words: messages.writeWhatItIs, picture: <NotesPage written /> },
  wrong: {
    words: messages.measuredButNobodyKnows,
    picture: <NotesPage written={false} />,
  },
};

/** The stop over its pad as it stands, and the pad where the hard limit is met. */
function PadAtLimit({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M10 4h130v10H10Z" />
      <path class="part plate" d="M56 15h38" />
      <Rubber x={75} y={16} height={40} />
      <path class="part plate" d="M50 88h50" />
      <path class="context dashed" d="M42 38h66" />
      {children}
    </>
  );
}

export const closingAtStop: Pair = {
  right: {
    words: messages.fromWherePadStands,
    picture: (
      <PadAtLimit>
        <Tape from={{ x: 114, y: 88 }} to={{ x: 114, y: 38 }} />
      </PadAtLimit>
    ),
  },
  wrong: {
    words: messages.fromStopsTipGap,
    picture: (
      <PadAtLimit>
        <Tape from={{ x: 114, y: 56 }} to={{ x: 114, y: 38 }} />
      </PadAtLimit>
    ),
  },
};

/** A wheel and a stop that move by different amounts. */
function WheelAndStop({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M4 6h78v10H4Z" />
      <Rubber x={48} y={17} height={30} />
      <Tyre x={116} y={56} width={30} height={66} />
      <path class="part" d="M12 74 100 80" />
      <path class="part plate" d="M34 73h28" />
      <circle class="part solid" cx={12} cy={74} r={5} />
      {children}
    </>
  );
}

export const tyreAtStop: Pair = {
  right: {
    words: messages.movementAlongStopsAxis,
    picture: (
      <WheelAndStop>
        <Tape from={{ x: 72, y: 73 }} to={{ x: 72, y: 52 }} />
      </WheelAndStop>
    ),
  },
  wrong: {
    words: messages.wheelsMovementTooMuch,
    picture: (
      <WheelAndStop>
        <Tape from={{ x: 139, y: 80 }} to={{ x: 139, y: 24 }} />
      </WheelAndStop>
    ),
  },
};
