import type { JSX } from "preact";
import * as messages from "../../words/compiled/screens/drawings.ts";
import {
  Arrow,
  Chock,
  Cross,
  GroundLine,
  Jack,
  Pictogram,
  Stand,
  Tick,
  Vehicle,
} from "./pictograms.tsx";

export const cautionPictureNames = [
  "ground",
  "jack",
  "energy",
  "loads",
  "travel",
  "rules",
  "screening",
  "raised",
  "qualified",
] as const;

export type CautionPictureName = (typeof cautionPictureNames)[number];

const titles: { readonly [Name in CautionPictureName]: string } = {
  ground: messages.vehicleOnLevelFirm,
  jack: messages.jackAloneIsCrossed,
  energy: messages.springThatFliesApart,
  loads: messages.stopPushingUpOn,
  travel: messages.wheelMovedUpAnd,
  rules: messages.pageOfRules,
  screening: messages.lensOverGapBetween,
  raised: messages.raisedVehicleThatRolls,
  qualified: messages.personWithWrench,
};

/** A stop 26 high that hangs from (x, y). */
function HangingStop({ x, y }: { readonly x: number; readonly y: number }) {
  return (
    <path
      class="strong"
      transform={`translate(${x} ${y})`}
      d="M-9 0H9C12 4 12 8 7 9c4 1 4 7-1 8 3 2 3 7-1 8H-5c-4-1-4-6-1-8-5-1-5-7-1-8-5-1-5-5-2-9Z"
    />
  );
}

const pictures: { readonly [Name in CautionPictureName]: () => JSX.Element } = {
  ground: () => (
    <>
      <GroundLine y={46} />
      <Vehicle y={46} />
      <Chock x={8} y={46} size={7} />
      <Chock x={34} y={46} size={7} flip />
      <Chock x={39} y={46} size={7} />
      <Chock x={65} y={46} size={7} flip />
    </>
  ),
  jack: () => (
    <>
      <path class="part solid" d="M4 8h64v10H4Z" />
      <GroundLine y={48} />
      <Jack x={19} y={48} height={30} />
      <Cross x={19} y={33} size={9} />
      <Stand x={52} y={48} height={30} />
      <Tick x={65} y={30} />
    </>
  ),
  energy: () => (
    <>
      <path class="part" d="M22 50h28M22 8h28" />
      <path class="accent-line" d="M26 46l20-5-20-6 20-6-20-6 20-6-20-5" />
      <Arrow d="M14 30 6 22" heads="h5M6 22v5" />
      <Arrow d="M14 30 6 38" heads="h5M6 38v-5" />
      <Arrow d="m58 30 8-8" heads="h-5M66 22v5" />
      <Arrow d="m58 30 8 8" heads="h-5M66 38v-5" />
    </>
  ),
  loads: () => (
    <>
      <path class="part solid" d="M6 6h60v12H6Z" />
      <path class="part" d="M24 20h24" />
      <HangingStop x={36} y={21} />
      <path class="part" d="m6 53 22-5h16l22 5" />
      <Arrow d="M14 40V24" heads="m-4 4 4-4 4 4" />
      <Arrow d="M58 40V24" heads="m-4 4 4-4 4 4" />
    </>
  ),
  travel: () => (
    <>
      <GroundLine y={52} />
      <rect class="part solid" x={28} y={14} width={22} height={32} rx={7} />
      <path class="context dashed" d="M35 15v30M43 15v30" />
      <path class="part" d="M28 32H8M8 26v12" />
      <path class="context dashed" d="m10 8 12 3-12 4 12 4-12 4" />
      <Arrow d="M61 12v34" heads="m-5-5 5 5 5-5M56 17l5-5 5 5" />
    </>
  ),
  rules: () => (
    <>
      <path class="part solid" d="M18 4h26l10 10v38H18Z" />
      <path class="part" d="M44 4v10h10" />
      <path class="context" d="M25 22h22M25 30h22M25 38h22" />
      <path class="accent-line" d="M25 45h12" />
      <path class="accent-line" d="M25 13h10" />
    </>
  ),
  screening: () => (
    <>
      <path class="part" d="M8 6h38" />
      <HangingStop x={26} y={7} />
      <path class="part" d="M8 46h38" />
      <circle class="arrow" cx={30} cy={36} r={16} />
      <path class="thick" d="m43 46 13 8" />
    </>
  ),
  raised: () => (
    <>
      <GroundLine y={50} />
      <g transform="rotate(-7 36 30)">
        <Vehicle y={40} tyres={false} />
      </g>
      <circle class="part solid" cx={21} cy={41} r={9} />
      <circle class="part solid" cx={52} cy={41} r={9} />
      <circle class="part" cx={21} cy={41} r={3} />
      <circle class="part" cx={52} cy={41} r={3} />
      <Arrow d="M57 5c5 2 8 6 9 11" heads="m-5-4 5 4 3-6" />
      <Arrow d="M4 46V30" heads="m-3 3 3-3 3 3M1 43l3 3 3-3" />
    </>
  ),
  qualified: () => (
    <>
      <circle class="part solid" cx={28} cy={15} r={10} />
      <path class="part solid" d="M8 52c0-14 8-21 20-21s20 7 20 21Z" />
      <path class="thick" d="m44 38 14-17" />
      <path class="arrow" d="M55 12c-2 4 0 8 4 9 4 2 8 0 9-4l-5 1-3-3 1-5c-3-1-5 0-6 2Z" />
    </>
  ),
};

/** What a caution is about, about 72 × 56 px; the words stand beside it. */
export function CautionPicture({ caution }: { readonly caution: CautionPictureName }) {
  const Picture = pictures[caution];
  return (
    <Pictogram title={titles[caution]}>
      <Picture />
    </Pictogram>
  );
}
