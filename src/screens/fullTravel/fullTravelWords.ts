import type { TouchedPart } from "../../physics/fitment.ts";
import type { MetPart } from "../../physics/fullTravel/index.ts";
import type { ChoiceValue } from "../../records/check/choices.ts";
import * as messages from "../../words/compiled/screens/fullTravel.ts";
import { limitTitles } from "../readings/limitWords.ts";

/** What stands before a contact's number. */
export const partNames: { readonly [Part in MetPart]: string } = {
  stop: messages.stopMeetsItsPad,
  block: messages.blockInStopsPlace,
  tyre: messages.tireTouches,
  damper: limitTitles.damper,
  spring: limitTitles.spring,
  metal: limitTitles.metal,
  hose: messages.hoseWireOrLine,
  other: limitTitles.other,
};

/** Parts whose name does not say what it was. */
export const unnamedParts: readonly TouchedPart[] = ["metal", "hose", "other"];

/** What carries the vehicle at this axle: it decides what may be done to move the wheel by hand. */
export type SpringSort = ChoiceValue<"fullTravel.spring">;

export const springSorts: readonly { value: SpringSort; name: string; hint: string }[] = [
  { value: "coil", name: messages.coilSpring, hint: messages.itIsTakenOut },
  {
    value: "leaf",
    name: messages.leafSpring,
    hint: messages.itLocatesAxleAnd,
  },
  { value: "torsionBar", name: messages.torsionBar, hint: messages.itIsUnloadedAs },
  { value: "air", name: messages.airSpring, hint: messages.itsAirIsLet },
];

export interface FullTravelCaution {
  readonly id: string;
  readonly words: string;
}

const whoDoes: { readonly [Sort in SpringSort]: string } = {
  coil: messages.qualifiedPersonTakesSpring,
  leaf: messages.neverTakeOutLeaf,
  torsionBar: messages.qualifiedPersonUnloadsTorsion,
  air: messages.qualifiedPersonLetsAir,
};

const energies: { readonly [Sort in SpringSort]: string } = {
  coil: messages.springsAndGasShocks,
  leaf: messages.loadedLeafSpringAnd,
  torsionBar: messages.torsionBarAndGas,
  air: messages.airUnderPressureAnd,
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
      words: messages.levelFirmGroundOther,
    },
    { id: `energy.${spring}`, words: energies[spring] },
    {
      id: `slowly.${moved}`,
      words: messages.jackUnderMovesWheel({ moved }),
    },
    {
      id: "force",
      words: messages.stopImmediatelyIfHose,
    },
    {
      id: "refit",
      words: messages.everythingGoesBackAs,
    },
  ];
}

/** How the travel is measured, step by step, for each sort of spring. */
export function measuringSteps(spring: SpringSort): readonly string[] {
  if (spring === "leaf") {
    return [
      messages.withVehicleOnIts,
      messages.qualifiedPersonLoadsOr,
      messages.onToWhereStop,
      messages.goOnOnlyAs,
    ];
  }
  const freed = {
    coil: messages.springOut,
    torsionBar: messages.torsionBarUnloaded,
    air: messages.airLetOut,
  }[spring];
  return [
    messages.firstWithVehicleOn,
    messages.stopFittedRaiseWheel({ freed }),
    messages.onToWhereStop,
    messages.putBlockInStops,
  ];
}

export const cannotCheck: readonly string[] = [
  messages.geometryIsSameAs,
  messages.howStiffStopIs,
  messages.howFarVehicleSags,
  messages.whatMovesUnderLoad,
  messages.whereOtherWheelOr,
];
