import fc from "fast-check";
import { type Matrix, matrix, multiply, rotationMatrix, transpose, unit } from "mathjs";
import { describe, expect, it } from "vitest";
import {
  leanToRight,
  longEdgeFall,
  postureOf,
  quarterTurns,
} from "../../src/sensors/phoneAngle.ts";
import {
  degreesBetween,
  type Up,
  upFromAcceleration,
  upFromOrientation,
} from "../../src/sensors/upDirection.ts";

// Rotations from outside the project: mathjs' rotationMatrix. W3C Device Orientation and Motion: the
// angles of an event turn the phone's axes to the earth's by Rz(alpha)·Rx(beta)·Ry(gamma).

const turn = (degrees: number, axis: readonly [number, number, number]) =>
  rotationMatrix(unit(degrees, "deg"), matrix([...axis])) as Matrix;

const product = (...factors: Matrix[]): Matrix =>
  factors.reduce((left, right) => multiply(left, right) as Matrix);

function upBy(phoneToEarth: Matrix): Up {
  const up = multiply(transpose(phoneToEarth), matrix([0, 0, 1])) as Matrix;
  const [x = 0, y = 0, z = 0] = up.toArray() as number[];
  return { x, y, z };
}

const [ex, ey, ez] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;

const eventRotation = (alpha: number, beta: number, gamma: number) =>
  product(turn(alpha, ez), turn(beta, ex), turn(gamma, ey));

const angle = (least: number, greatest: number) =>
  fc.double({ min: least, max: greatest, noNaN: true });

function known(up: Up | null): Up {
  if (up === null) throw new Error("no direction");
  return up;
}

describe("up in the phone's axes", () => {
  it("is the third row of Rz·Rx·Ry, whatever alpha is", () => {
    fc.assert(
      fc.property(angle(0, 360), angle(-180, 180), angle(-90, 90), (alpha, beta, gamma) => {
        const wanted = upBy(eventRotation(alpha, beta, gamma));
        const up = known(upFromOrientation(beta, gamma));
        expect(up.x).toBeCloseTo(wanted.x, 12);
        expect(up.y).toBeCloseTo(wanted.y, 12);
        expect(up.z).toBeCloseTo(wanted.z, 12);
      }),
    );
  });

  it("is the same from the acceleration of a phone at rest", () => {
    fc.assert(
      fc.property(angle(-180, 180), angle(-90, 90), (beta, gamma) => {
        const wanted = upBy(eventRotation(77, beta, gamma));
        const up = known(
          upFromAcceleration(9.80665 * wanted.x, 9.80665 * wanted.y, 9.80665 * wanted.z),
        );
        expect(degreesBetween(up, known(upFromOrientation(beta, gamma)))).toBeLessThan(1e-6);
      }),
    );
  });

  it("is not told from an absent angle, from no number, or while the phone is thrown about", () => {
    expect(upFromOrientation(null, 1)).toBeNull();
    expect(upFromOrientation(1, null)).toBeNull();
    expect(upFromOrientation(Number.NaN, 1)).toBeNull();
    expect(upFromAcceleration(null, 0, 9.8)).toBeNull();
    expect(upFromAcceleration(0, null, 9.8)).toBeNull();
    expect(upFromAcceleration(0, 0, Number.POSITIVE_INFINITY)).toBeNull();
    expect(upFromAcceleration(0, 0, 0)).toBeNull();
    expect(upFromAcceleration(0, 0, 12)).toBeNull();
    expect(upFromAcceleration(5.5, 5.5, 5.5)?.z).toBeCloseTo(1 / Math.sqrt(3), 12);
  });
});

/**
 * A phone whose screen is square to the sight of the person before it, first upright, then turned
 * clockwise by `clockwise` as that person sees it, rolled about its own long edge and turned about the
 * vertical by any amount.
 */
function heldUpright(clockwise: number, heading = 0, roll = 0): Up {
  const upright = product(turn(heading, ez), turn(90, ex));
  return upBy(product(upright, turn(-clockwise, ez), turn(roll, ey)));
}

describe("the angle of a line along the phone's long edge", () => {
  it("is how far the top end lies lower, whatever the roll and the heading", () => {
    fc.assert(
      fc.property(angle(-65, 65), angle(0, 360), angle(-180, 180), (fall, heading, roll) => {
        // 90° clockwise the top points to the right and lies level; further on it falls.
        expect(longEdgeFall(heldUpright(90 + fall, heading, roll))).toBeCloseTo(fall, 8);
      }),
    );
  });

  it.each([
    [0, "rightEdge"],
    [180, "leftEdge"],
  ] as const)("stands on a long edge: rolled by %s° it is the %s", (roll, posture) => {
    expect(postureOf("line", heldUpright(98, 20, roll))).toEqual({ ok: true, posture });
  });

  it("has the edge below that the screen's own axes say", () => {
    // Top to the right, screen to the person: the screen's right edge lies below.
    expect(postureOf("line", { x: -1, y: 0, z: 0 })).toEqual({ ok: true, posture: "rightEdge" });
  });

  it.each([
    ["flat", { x: 0, y: 0.1, z: 0.99 }],
    ["flat", { x: 0.1, y: 0.1, z: -0.99 }],
    ["onShortEdge", { x: 0.1, y: 0.99, z: 0 }],
    ["onShortEdge", { x: 0.1, y: -0.99, z: 0 }],
  ] as const)("tells that the phone lies wrong: %s", (fault, up) => {
    expect(postureOf("line", up)).toEqual({ ok: false, fault });
  });
});

describe("the lean of an axis along the upright phone", () => {
  it("is how far the top leans to the right as seen before the screen", () => {
    fc.assert(
      fc.property(angle(-179, 179), angle(0, 360), (clockwise, heading) => {
        expect(leanToRight(heldUpright(clockwise, heading))).toBeCloseTo(clockwise, 8);
      }),
    );
  });

  it("is that of the picture in the screen's plane where the axis leans back as well", () => {
    fc.assert(
      fc.property(angle(-40, 40), angle(-25, 25), (lean, back) => {
        const up = heldUpright(0);
        const axis = { x: Math.tan((lean * Math.PI) / 180), z: Math.tan((back * Math.PI) / 180) };
        // The phone's y axis along (tan lean, 1, tan back), its x axis level.
        const length = Math.hypot(axis.x, 1, axis.z);
        const flat = Math.hypot(1, axis.x);
        const leaning = { x: -axis.x / flat, y: 1 / length, z: 0 };
        const z = Math.sqrt(Math.max(0, 1 - leaning.x ** 2 - leaning.y ** 2));
        expect(Math.hypot(up.x, up.y, up.z)).toBeCloseTo(1, 12);
        const found = leanToRight({ ...leaning, z });
        expect(Math.tan((found * Math.PI) / 180)).toBeCloseTo((axis.x * length) / flat, 8);
      }),
    );
  });

  it.each([
    ["flat", { x: 0, y: 0.1, z: 0.99 }],
    ["upsideDown", { x: 0, y: -1, z: 0 }],
    ["leansBack", { x: 0, y: 0.8, z: 0.6 }],
    ["onLongEdge", { x: 0.99, y: 0.1, z: 0 }],
  ] as const)("tells that the phone lies wrong: %s", (fault, up) => {
    expect(postureOf("lean", up)).toEqual({ ok: false, fault });
  });

  it("is taken upright", () => {
    expect(postureOf("lean", heldUpright(17))).toEqual({ ok: true, posture: "upright" });
  });
});

describe("words that stand upright", () => {
  it.each([
    [{ x: 0, y: 1, z: 0 }, 0, 0],
    [{ x: 1, y: 0.1, z: 0 }, 0, 1],
    [{ x: -1, y: 0.1, z: 0 }, 0, 3],
    [{ x: 0, y: -1, z: 0 }, 0, 2],
    [{ x: 1, y: 0, z: 0 }, 90, 0],
    [{ x: -1, y: 0, z: 0 }, 270, 0],
    [{ x: 0, y: 0.1, z: 0.99 }, 0, 0],
  ] as const)("with up at %o and the page turned by %s: %s quarter turns", (up, page, turns) => {
    expect(quarterTurns(up, page)).toBe(turns);
  });
});
