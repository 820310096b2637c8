import { describe, expect, it } from "vitest";
import type { Fitment } from "../../../src/physics/fitment.ts";
import type {
  ComparedContact,
  ComparedCorner,
} from "../../../src/physics/fullTravel/compareFullTravel.ts";
import type { SuspectId } from "../../../src/physics/fullTravel/fullTravelCheck.ts";
import {
  fullTravelLine,
  hardContacts,
  likeliest,
  likeliestSentence,
  suspectName,
} from "../../../src/physics/fullTravel/fullTravelSentences.ts";
import type { Explanation } from "../../../src/physics/fullTravel/likeliestWrong.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

const reading = { values: [100], tol: 1 };
const fitment: Fitment = {
  use: "daily",
  layout: { kind: "strut", readings: {} },
  corners: [
    { side: "left", gap: reading, limits: [{ kind: "tyre", at: "wheel", reading }] },
    { side: "right", gap: reading, limits: [{ kind: "metal", at: "stop", reading }] },
  ],
  stop: {
    name: "Short firm",
    duty: "impact",
    freeHeight: reading,
    usableCompressionMm: 30,
    usableTolMm: 0,
    curve: [[30, 6000]],
    damping: null,
    testedAtSpeed: false,
  },
};

const explained = (change: Partial<Explanation<SuspectId>>): Explanation<SuspectId> => ({
  id: "left.gap",
  change: 4,
  wouldBe: 25,
  slip: null,
  explains: true,
  share: 1,
  ...change,
});

const corner = (
  explanations: readonly Explanation<SuspectId>[],
  contacts: readonly ComparedContact[] = [],
): ComparedCorner => ({ side: "left", contacts, agrees: explanations.length === 0, explanations });

const said = (explanations: readonly Explanation<SuspectId>[]) => {
  const sentence = likeliestSentence(fitment, corner(explanations));
  return sentence && inModelUnits(sentence);
};

const contact = (change: Partial<ComparedContact>): ComparedContact => ({
  part: "tyre",
  measuredMm: 90,
  measuredHalfMm: 2,
  computed: null,
  afterFullStop: null,
  beforeStop: false,
  ...change,
});
const computed = (agrees: boolean): ComparedContact["computed"] => ({
  travelMm: 80,
  interval: [78, 82],
  differenceMm: 10,
  doubtMm: 3,
  normalisedError: agrees ? 0.5 : 3.3,
  agrees,
});

describe("what is likeliest wrong, in words", () => {
  it.each([
    ["left.limits.0", "the left clearance over the tire"],
    ["left.limits.7", "the left clearance to the hard contact"],
    ["pivotToStop", "the distance from pivot to stop"],
    [
      "fullTravel.left.hose",
      "the hand check where a hose, wire or line touches or pulls tight, left",
    ],
    ["fullTravel.right.atRide", "the start of the hand check, right"],
    ["fullTravel.left.stop", "the hand check where the stop meets its pad, left"],
    ["right.limits.0", "the right metal to metal clearance"],
    ["stop.freeHeight", "the free height of the stop"],
  ] as const)("names %s: %s", (id, name) => {
    expect(inModelUnits(suspectName(fitment, id))).toBe(name);
  });

  it("says nothing where all agree", () => {
    expect(said([])).toBeNull();
    expect(likeliest(corner([]))).toEqual([]);
  });

  it("says what one reading would have to be, and to take it again", () => {
    expect(said([explained({})])).toBe(
      "The left gap is likeliest wrong. It would have to be 25.0 mm. Re-measure it.",
    );
    expect(said([explained({ slip: "unit" })])).toContain("inches and millimeters were mixed up");
    expect(said([explained({ id: "stopLean", wouldBe: -5, slip: "sign" })])).toContain(
      "It would have to be -5.0°. That is what it would be with its sign reversed.",
    );
  });

  it("names together what can't be told apart, and no more than three", () => {
    const shares = [0.4, 0.3, 0.25, 0.21, 0.01];
    const many = shares.map((share, index) => explained({ id: `left.limits.${index}`, share }));
    expect(likeliest(corner(many))).toHaveLength(3);
    expect(said(many.slice(0, 2))).toContain("Or it is the left clearance to the hard contact.");
    expect(said(many.slice(0, 2))).toContain("Re-measure these");
    // At least half as likely as the likeliest.
    const apart = [0.4, 0.2, 0.19].map((share, index) =>
      explained({ id: `left.limits.${index}`, share }),
    );
    expect(likeliest(corner(apart))).toEqual(apart.slice(0, 2));
    const three = (["left.gap", "pivotToStop", "stopLean"] as const).map((id) => explained({ id }));
    expect(said(three)).toContain(
      " Or it is the distance from pivot to stop, or the lean of the stop. Re-measure these, the left gap first.",
    );
  });

  it("says where the travel was counted from, and when no single reading explains it", () => {
    const start = explained({ id: "fullTravel.left.atRide", wouldBe: null, change: 14 });
    expect(said([start])).toBe(
      "The start of the hand check, left is likeliest wrong. The wheel would have been 14.0 mm below its ride height where the travel was counted from. Re-measure it.",
    );
    expect(said([{ ...start, change: -3 }])).toContain("3.0 mm above its ride height");
    expect(said([explained({ explains: false })])).toContain(
      "No single reading explains it; the left gap comes nearest.",
    );
  });
});

describe("hard contacts", () => {
  it("are told where they come before the stop, before its end, or too near to tell", () => {
    const sentences = hardContacts(
      corner(
        [],
        [
          contact({ part: "stop" }),
          contact({ part: "hose", beforeStop: true }),
          contact({ afterFullStop: { leftMm: -12, halfMm: 3, state: "no" } }),
          contact({ part: "metal", afterFullStop: { leftMm: 1, halfMm: 3, state: "unsure" } }),
          contact({ part: "other", afterFullStop: { leftMm: 30, halfMm: 3, state: "ok" } }),
        ],
      ),
    );
    expect(sentences.map(({ state }) => state)).toEqual(["no", "no", "unsure"]);
    expect(sentences.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "A hose, wire or line touches or pulls tight, left, before the stop meets its pad. Do not drive it like this.",
      "The tire touches, left, 12.0 mm of wheel travel before the stop is fully compressed. Do not drive it like this.",
      "Metal touches metal, left, too close to full compression of the stop to tell which comes first.",
    ]);
  });
});

describe("the desk's line", () => {
  const line = (corners: readonly ComparedCorner[]) =>
    inModelUnits(fullTravelLine(fitment, corners));

  it("counts contacts, those beyond the doubt and hard ones", () => {
    expect(line([corner([], [contact({})])])).toBe("1 contact by hand, 0 compared.");
    expect(line([corner([], [contact({ computed: computed(true) }), contact({})])])).toBe(
      "2 contacts by hand, 1 compared: all agree within their margins of error.",
    );
    expect(
      line([
        corner(
          [explained({}), explained({ id: "pivotToStop" })],
          [contact({ computed: computed(false) }), contact({ beforeStop: true })],
        ),
      ]),
    ).toBe(
      "2 contacts by hand, 1 compared: 1 beyond the margin of error, likeliest wrong the left gap. 1 hard contact comes before or near full compression of the stop.",
    );
    expect(
      line([corner([], [contact({ beforeStop: true }), contact({ beforeStop: true })])]),
    ).toContain("2 hard contacts come");
  });

  it("leaves what is likeliest wrong to the sentence that follows on the answer", () => {
    const apart = [corner([explained({})], [contact({ computed: computed(false) })])];
    expect(inModelUnits(fullTravelLine(null, apart))).toBe(
      "1 contact by hand: 1 beyond the margin of error.",
    );
  });
});
