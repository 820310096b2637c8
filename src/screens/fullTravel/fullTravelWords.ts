import type { TouchedPart } from "../../physics/fitment.ts";
import type { MetPart } from "../../physics/fullTravel/index.ts";

/** What stands before a contact's number. */
export const partNames: { readonly [Part in MetPart]: string } = {
  stop: "Stop meets its pad",
  block: "Block in the stop's place",
  tyre: "Tire touches",
  damper: "Shock at its end",
  spring: "Spring coils closed",
  metal: "Metal on metal",
  hose: "Hose, wire or line",
  other: "Something else",
};

/** Parts whose name does not say what it was. */
export const unnamedParts: readonly TouchedPart[] = ["metal", "hose", "other"];

/** What carries the vehicle at this axle: it decides what may be done to move the wheel by hand. */
export type SpringSort = "coil" | "leaf" | "torsionBar" | "air";

export const springSorts: readonly { value: SpringSort; name: string; hint: string }[] = [
  { value: "coil", name: "Coil spring", hint: "It is taken out for the check." },
  {
    value: "leaf",
    name: "Leaf spring",
    hint: "It locates the axle and is never taken out.",
  },
  { value: "torsionBar", name: "Torsion bar", hint: "It is unloaded, as the vehicle maker says." },
  { value: "air", name: "Air spring", hint: "Its air is let out, as the vehicle maker says." },
];

export interface FullTravelCaution {
  readonly id: string;
  readonly words: string;
}

const whoDoes: { readonly [Sort in SpringSort]: string } = {
  coil: "A qualified person takes the spring out and puts it back. If that isn't you, have it done.",
  leaf: "Never take out a leaf spring: it locates the axle. A qualified person loads or cycles the axle with the spring in. If that isn't you, have it done or leave this check out.",
  torsionBar:
    "A qualified person unloads the torsion bar as the vehicle maker says. If that isn't you, have it done.",
  air: "A qualified person lets the air out as the vehicle maker says. If that isn't you, have it done.",
};

const energies: { readonly [Sort in SpringSort]: string } = {
  coil: "Springs and gas shocks hold energy. Coil springs only with a compressor rated for them.",
  leaf: "A loaded leaf spring and gas shocks hold energy. Nobody stands beside a spring under load.",
  torsionBar: "A torsion bar and gas shocks hold energy, even as the vehicle hangs.",
  air: "Air under pressure and gas shocks hold energy. No pressure is left before anything is moved.",
};

/** What must be read and kept to before the wheel is moved by hand. */
export function fullTravelCautions(
  spring: SpringSort,
  beamAxle: boolean,
): readonly FullTravelCaution[] {
  const moved = beamAxle ? "axle" : "arm";
  return [
    { id: `qualified.${spring}`, words: whoDoes[spring] },
    {
      id: "stands",
      words:
        "Level, firm ground, the other wheels chocked. Use rated stands at the jacking points. Never under a vehicle held by a jack alone.",
    },
    { id: `energy.${spring}`, words: energies[spring] },
    {
      id: `slowly.${moved}`,
      words: `The jack under the ${moved} moves the wheel; it does not hold the vehicle. Move it slowly, hands clear of what closes.`,
    },
    {
      id: "force",
      words: "Stop immediately if a hose, wire or shaft pulls tight or anything binds.",
    },
    {
      id: "refit",
      words:
        "Everything goes back as the vehicle maker says, with new fasteners where asked for. Local rules and the maker's instructions come first.",
    },
  ];
}

/** How the travel is measured, step by step, for each sort of spring. */
export function measuringSteps(spring: SpringSort): readonly string[] {
  if (spring === "leaf") {
    return [
      "With the vehicle on its wheels: mark the ride height. That is 0.",
      "The qualified person loads or cycles the axle with the spring in.",
      "On to where the stop first meets its pad. Write it down.",
      "Go on only as far as it is safe to every other contact.",
    ];
  }
  const freed = {
    coil: "Spring out",
    torsionBar: "Torsion bar unloaded",
    air: "Air let out",
  }[spring];
  return [
    "First, with the vehicle on its wheels: mark the ride height.",
    `${freed}, stop fitted: raise the wheel back to that mark. That is 0.`,
    "On to where the stop first meets its pad. Write it down.",
    "Put the block in the stop's place, and go on slowly to it and every other contact.",
  ];
}

export const cannotCheck: readonly string[] = [
  "The geometry is the same as on the road, so travel to contact can be checked by hand.",
  "How stiff the stop is, and how far, how often and how hard it is pressed. No hand can press it as an impact does.",
  "How far the vehicle sags under load, and where the wheel stands then.",
  "What moves under load. Bushings, frame and tire give way, so something may touch sooner on the road.",
  "Where the other wheel or the steering was left. Move both wheels, and turn the steering to both ends.",
];
