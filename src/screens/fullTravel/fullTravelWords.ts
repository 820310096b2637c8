import type { TouchedPart } from "../../physics/fitment.ts";
import type { MetPart } from "../../physics/fullTravel/fullTravelCheck.ts";

/** What stands before a contact's number. */
export const partNames: { readonly [Part in MetPart]: string } = {
  stop: "Stop meets its pad",
  block: "Block in the stop's place",
  tyre: "Tyre touches",
  damper: "Damper at its end",
  spring: "Spring coils closed",
  metal: "Metal on metal",
  hose: "Hose, wire or line",
  other: "Something else",
};

/** Parts whose name does not say what it was. */
export const unnamedParts: readonly TouchedPart[] = ["metal", "hose", "other"];

export interface FullTravelCaution {
  readonly id: string;
  readonly words: string;
}

export const fullTravelCautions: readonly FullTravelCaution[] = [
  {
    id: "qualified",
    words:
      "A qualified person takes the spring out and puts it back. If you are not, have it done.",
  },
  {
    id: "stands",
    words:
      "Level, firm ground, the other wheels chocked. The vehicle stands on rated stands, on the points rated for them. Never under a vehicle held by a jack alone.",
  },
  {
    id: "energy",
    words:
      "Springs and gas dampers hold energy. Coil springs only with a compressor rated for them; torsion bars and air springs as the vehicle maker says.",
  },
  {
    id: "slowly",
    words:
      "The jack under the arm moves the wheel; it does not hold the vehicle. Move it slowly, hands clear of what closes.",
  },
  {
    id: "force",
    words:
      "End at once where a brake hose, wire or shaft pulls tight or anything binds. Force nothing.",
  },
  {
    id: "refit",
    words:
      "Everything goes back as the vehicle maker says, with new fasteners where asked for. Local rules and the maker's instructions come first.",
  },
];

export const cannotCheck: readonly string[] = [
  "Nothing of the geometry changes with the spring out: the arms swing as they do on the road. So travel to contact can be checked by hand.",
  "How stiff the stop is, how far it is pressed, how often and how hard it is met: no hand can press it as an impact does.",
  "How far the vehicle sags under load, and where the wheel stands then.",
  "What moves under load: bushes, frame and tyre give way, so something may touch sooner on the road.",
  "Where the other wheel or the steering was left: move both wheels, and turn the steering to both ends.",
];
