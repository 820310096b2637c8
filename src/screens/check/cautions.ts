export interface Caution {
  readonly id: string;
  readonly words: string;
}

/** What must be acknowledged before anything is measured. */
export const levelCautions: readonly Caution[] = [
  {
    id: "caution.ground",
    words: "Level, firm ground. Wheels chocked on both sides before anyone reaches under.",
  },
  {
    id: "caution.jack",
    words:
      "Never under a vehicle held by a jack alone. Rated stands, on the points rated for them.",
  },
  {
    id: "caution.energy",
    words: "Springs and gas dampers hold energy. Loosen nothing to take these readings.",
  },
  {
    id: "caution.loads",
    words: "A taller stop limits upward travel and can raise the loads in frame and mounts.",
  },
  {
    id: "caution.travel",
    words:
      "Before driving with a changed stop: check the whole travel by hand, with the spring out.",
  },
  {
    id: "caution.rules",
    words: "Local rules on raised vehicles and the vehicle maker's instructions come first.",
  },
  {
    id: "caution.screening",
    words: "The result screens an installation. It does not certify it.",
  },
];

/** What a raised vehicle adds. */
export const raisedCautions: readonly Caution[] = [
  {
    id: "caution.raised",
    words: "A raised vehicle handles, brakes and rolls differently.",
  },
  {
    id: "caution.qualified",
    words:
      "Brake hoses, ABS wires, driveshaft angles, headlamp aim and steering: have a qualified person check them.",
  },
];

export type CautionLevel = "level" | "raised";

export function cautionsOf(level: CautionLevel): readonly Caution[] {
  return level === "raised" ? [...raisedCautions, ...levelCautions] : levelCautions;
}
