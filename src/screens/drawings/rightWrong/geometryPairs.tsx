import type { ComponentChildren } from "preact";
import * as messages from "../../../words/compiled/screens/drawings/rightWrong.ts";
import type { Pair } from "./pair.ts";
import { ArmBar, Bolt, Coils, DamperShape, Gauge, Ground, Rubber, Tape, Tyre } from "./shapes.tsx";

const frontBolt = { x: 26, y: 16 };
const rearBolt = { x: 18, y: 84 };
const jointFromAbove = { x: 126, y: 56 };

/** An arm from above: its two bolts, the straight edge along them, its outer joint. */
function ArmFromAbove({ children }: { children: ComponentChildren }) {
  const { x, y } = jointFromAbove;
  return (
    <>
      <ArmBar points={`${frontBolt.x},${frontBolt.y} ${x},${y} ${rearBolt.x},${rearBolt.y}`} />
      <path class="part dashed" d="M27.4 4L16.6 96" />
      <Bolt {...frontBolt} />
      <Bolt {...rearBolt} />
      <Bolt x={x} y={y} radius={6} />
      {children}
    </>
  );
}

/** A length of an arm: square from the pivot line, not from one bolt. */
function squarePair(end: { readonly x: number; readonly y: number }, stop: boolean): Pair {
  const drawn = stop ? <circle class="stop" cx={end.x} cy={end.y} r={9} /> : <Bolt {...end} />;
  const along = { x: -8 / Math.hypot(8, 68), y: 68 / Math.hypot(8, 68) };
  const down = (end.x - frontBolt.x) * along.x + (end.y - frontBolt.y) * along.y;
  const foot = {
    x: Math.round(10 * (frontBolt.x + down * along.x)) / 10,
    y: Math.round(10 * (frontBolt.y + down * along.y)) / 10,
  };
  return {
    right: {
      words: messages.squareFromLineThrough,
      picture: (
        <ArmFromAbove>
          {drawn}
          <Tape from={foot} to={end} />
        </ArmFromAbove>
      ),
    },
    wrong: {
      words: messages.fromOneBoltToo,
      picture: (
        <ArmFromAbove>
          {drawn}
          <Tape from={rearBolt} to={end} />
        </ArmFromAbove>
      ),
    },
  };
}

export const pivotToStop = squarePair({ x: 72, y: 44 }, true);
export const pivotToOuter = squarePair(jointFromAbove, false);
export const pivotToMount = squarePair({ x: 86, y: 54 }, false);

function DamperOnArm({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M40 4h100v8H40Z" />
      <Tyre x={132} y={64} width={22} height={56} />
      <ArmBar points="20,74 112,82" />
      <path class="part solid" d="M72 75V58h16v18" />
      <DamperShape x={80} y={58} length={48} body={28} turn={4} />
      <Bolt x={20} y={74} />
      {children}
    </>
  );
}

/** An arm that dips between its two bolts. */
function CrankedArm({ children }: { children: ComponentChildren }) {
  return (
    <>
      <Tyre x={134} y={60} width={22} height={60} />
      <ArmBar points="18,44 66,76 116,58" />
      <path class="context dashed" d="M18 44H112" />
      <Bolt x={18} y={44} />
      <Bolt x={116} y={58} radius={5} />
      {children}
    </>
  );
}

export const armAngle: Pair = {
  right: {
    words: messages.alongLineFromBolt,
    picture: (
      <CrankedArm>
        <Gauge at={{ x: 67, y: 51 }} turn={8.1} length={64} />
      </CrankedArm>
    ),
  },
  wrong: {
    words: messages.alongArmsBentEdge,
    picture: (
      <CrankedArm>
        <Gauge at={{ x: 44, y: 57 }} turn={33.7} length={32} />
      </CrankedArm>
    ),
  },
};

/** A pad that stands high above its arm. */
function RaisedPad({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M50 2h60v8H50Z" />
      <Tyre x={134} y={62} width={22} height={58} />
      <ArmBar points="18,70 114,84" />
      <path class="part solid" d="M72 78V46h20v34" />
      <path class="part plate" d="M68 46h28" />
      <Rubber x={82} y={11} height={30} />
      <Bolt x={18} y={70} />
      <Bolt x={114} y={84} radius={5} />
      {children}
    </>
  );
}

const padLine = (
  <RaisedPad>
    <Gauge at={{ x: 50, y: 58 }} turn={-20.6} length={40} />
  </RaisedPad>
);
const armLine = (
  <RaisedPad>
    <Gauge at={{ x: 44, y: 74 }} turn={8.3} length={40} />
  </RaisedPad>
);

export const stopLineAngle: Pair = {
  right: { words: messages.alongLineFromBoltTo, picture: padLine },
  wrong: { words: messages.alongArmThatIs, picture: armLine },
};

export const mountLineAngle: Pair = {
  right: {
    words: messages.alongLineFromBoltToLower,
    picture: (
      <DamperOnArm>
        <Gauge at={{ x: 48, y: 66.5 }} turn={-15} length={38} />
      </DamperOnArm>
    ),
  },
  wrong: {
    words: messages.alongArmThatIs,
    picture: (
      <DamperOnArm>
        <Gauge at={{ x: 46, y: 76 }} turn={5} length={38} />
      </DamperOnArm>
    ),
  },
};

/** A leaning stop under an upright bracket. */
function LeaningStop({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M14 4h122v10H14Z" />
      <path class="part solid" d="M56 14h34v20l-34-6Z" />
      <Rubber x={73} y={31} height={48} turn={18} />
      <path class="context dashed" d="M73 34v60" />
      {children}
    </>
  );
}

export const stopLean: Pair = {
  right: {
    words: messages.gaugeAlongRubber,
    picture: (
      <LeaningStop>
        <Gauge at={{ x: 84, y: 60 }} turn={108} length={40} />
      </LeaningStop>
    ),
  },
  wrong: {
    words: messages.gaugeAlongBracketIt,
    picture: (
      <LeaningStop>
        <Gauge at={{ x: 90, y: 24 }} turn={90} length={18} />
      </LeaningStop>
    ),
  },
};

/** A leaning damper with a spring that sits crooked around it. */
function CrookedSpring({ children }: { children: ComponentChildren }) {
  return (
    <>
      <path class="context solid" d="M20 2h110v8H20Z" />
      <Coils x={76} top={22} bottom={80} half={24} turns={5} lean={-4} />
      <DamperShape x={70} y={90} length={78} body={46} turn={9} />
      {children}
    </>
  );
}

const alongBody = (
  <CrookedSpring>
    <Gauge at={{ x: 81, y: 66 }} turn={99} length={34} />
  </CrookedSpring>
);
const alongSpring = (
  <CrookedSpring>
    <Gauge at={{ x: 101, y: 50 }} turn={86} length={44} />
  </CrookedSpring>
);

export const damperLean: Pair = {
  right: { words: messages.gaugeAlongShocksBody, picture: alongBody },
  wrong: { words: messages.gaugeAlongSpringIt, picture: alongSpring },
};

export const strutLean: Pair = {
  right: { words: messages.gaugeAlongStrutsBody, picture: alongBody },
  wrong: { words: messages.gaugeAlongSpringIt, picture: alongSpring },
};

export const damperLength: Pair = {
  right: {
    words: messages.eyeToEyeVehicle,
    picture: (
      <>
        <Ground y={92} />
        <path class="context solid" d="M24 8h84v8H24Z" />
        <Tyre x={126} y={60} height={62} />
        <ArmBar points="20,72 112,66" />
        <DamperShape x={66} y={68} length={50} body={30} />
        <Tape from={{ x: 50, y: 68 }} to={{ x: 50, y: 18 }} />
      </>
    ),
  },
  wrong: {
    words: messages.wheelOffGroundToo,
    picture: (
      <>
        <Ground y={96} />
        <path class="context solid" d="M24 4h84v8H24Z" />
        <Tyre x={126} y={58} height={62} />
        <ArmBar points="20,54 112,84" />
        <DamperShape x={66} y={70} length={58} body={30} />
        <path class="part" d="M92 96h12M98 96l-5-7 5-7 5 7Z" />
        <Tape from={{ x: 50, y: 70 }} to={{ x: 50, y: 12 }} />
      </>
    ),
  },
};

/** A beam axle seen from behind. */
function BeamAxle({ children, rails = false }: { children: ComponentChildren; rails?: boolean }) {
  return (
    <>
      <Ground y={92} />
      <Tyre x={22} y={62} height={60} />
      <Tyre x={128} y={62} height={60} />
      <path class="part solid" d="M34 58h82v8H34Z" />
      <path class="context solid" d="M30 8h14v12H30ZM106 8h14v12h-14Z" />
      <path class="context" d="M44 14h62" />
      {rails ? (
        <>
          <path class="part" d="M44 20h10v2M106 20H96v2" />
          <Rubber x={54} y={22} height={26} />
          <Rubber x={96} y={22} height={26} />
        </>
      ) : (
        <>
          <Rubber x={48} y={20} height={26} />
          <Rubber x={102} y={20} height={26} />
        </>
      )}
      {children}
    </>
  );
}

export const track: Pair = {
  right: {
    words: messages.middleOfTreadTo,
    picture: (
      <BeamAxle>
        <Tape from={{ x: 22, y: 84 }} to={{ x: 128, y: 84 }} />
      </BeamAxle>
    ),
  },
  wrong: {
    words: messages.outsideToOutsideOne,
    picture: (
      <BeamAxle>
        <Tape from={{ x: 10, y: 84 }} to={{ x: 140, y: 84 }} />
      </BeamAxle>
    ),
  },
};

export const stopSpacing: Pair = {
  right: {
    words: messages.middleOfOneStop,
    picture: (
      <BeamAxle rails>
        <Tape from={{ x: 54, y: 49 }} to={{ x: 96, y: 49 }} />
      </BeamAxle>
    ),
  },
  wrong: {
    words: messages.frameRailToFrame,
    picture: (
      <BeamAxle rails>
        <Tape from={{ x: 37, y: 14 }} to={{ x: 113, y: 14 }} />
      </BeamAxle>
    ),
  },
};
