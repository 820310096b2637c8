import type { CautionPictureName } from "../drawings/CautionPicture.tsx";

export type CautionId = `caution.${CautionPictureName}`;

export interface Caution {
  readonly id: CautionId;
  readonly picture: CautionPictureName;
  readonly words: string;
}

/** What must be acknowledged before anything is measured. */
export const levelCautions: readonly Caution[] = [
  {
    id: "caution.ground",
    picture: "ground",
    words:
      "Level, firm ground, front to back and side to side. Brake on, key out, wheels chocked both ways before anyone reaches under.",
  },
  {
    id: "caution.jack",
    picture: "jack",
    words: "Never under a vehicle held by a jack alone. Use rated stands at the jacking points.",
  },
  {
    id: "caution.energy",
    picture: "energy",
    words: "Springs and gas shocks hold energy. Loosen nothing to take these readings.",
  },
  {
    id: "caution.loads",
    picture: "loads",
    words: "A taller stop limits upward travel and can raise the loads in frame and mounts.",
  },
  {
    id: "caution.travel",
    picture: "travel",
    words:
      "Before driving with a changed stop: have the whole travel checked by hand by a qualified person. Never take out a spring that locates the axle.",
  },
  {
    id: "caution.rules",
    picture: "rules",
    words: "Local rules on raised vehicles and the vehicle maker's instructions come first.",
  },
  {
    id: "caution.screening",
    picture: "screening",
    words: "The result screens an installation. It does not certify it.",
  },
];

/** What a raised vehicle adds. */
export const raisedCautions: readonly Caution[] = [
  {
    id: "caution.raised",
    picture: "raised",
    words: "A raised vehicle handles, brakes and rolls differently.",
  },
  {
    id: "caution.qualified",
    picture: "qualified",
    words:
      "Brake hoses, ABS wires, driveshaft angles, headlight aim and steering: have a qualified person check them.",
  },
];

export type CautionLevel = "level" | "raised";

export function cautionsOf(level: CautionLevel): readonly Caution[] {
  return level === "raised" ? [...raisedCautions, ...levelCautions] : levelCautions;
}
