import type { JSX } from "preact";
import * as messages from "../../words/compiled/screens/drawings.ts";
import { Arrow, Cross, GroundLine, Jack, Pictogram, SideWheel, Vehicle } from "./pictograms.tsx";

export const standingPictureNames = ["tyres", "load", "settled", "wheels"] as const;

export type StandingPictureName = (typeof standingPictureNames)[number];

const titles: { readonly [Name in StandingPictureName]: string } = {
  tyres: messages.tireWithPressureGauge,
  load: messages.vehicleWithItsUsual,
  settled: messages.vehicleRolledBackAnd,
  wheels: messages.vehicleOnItsWheels,
};

const pictures: { readonly [Name in StandingPictureName]: () => JSX.Element } = {
  tyres: () => (
    <>
      <GroundLine y={50} />
      <circle class="part solid" cx={25} cy={29} r={21} />
      <circle class="part" cx={25} cy={29} r={12} />
      <circle class="part" cx={25} cy={29} r={3} />
      <path class="accent-line" d="M34 24c10-3 5 15 15 13 6-1 7-6 7-10" />
      <circle class="part solid" cx={56} cy={17} r={10} />
      <path class="accent-line" d="m56 17 4.5-5.5" />
      <path class="context" d="M49 17h2M63 17h-2M56 10v2" />
    </>
  ),
  load: () => (
    <>
      <GroundLine y={50} />
      <Vehicle y={50} />
      <rect class="strong" x={27} y={10} width={9} height={12} rx={1.5} />
      <rect class="strong" x={37.5} y={13} width={8} height={9} rx={1.5} />
      <path class="strong" d="M49 30h9v8h-9Z" />
      <Arrow d="M36 1v6" heads="m-3-3 3 3 3-3" />
    </>
  ),
  settled: () => (
    <>
      <GroundLine y={40} />
      <Vehicle y={40} />
      <Arrow d="M18 51h36" heads="m-5-4 5 4-5 4M23 47l-5 4 5 4" />
      <Arrow d="M10 4v14" heads="m-4-4 4 4 4-4M6 8l4-4 4 4" />
      <Arrow d="M62 4v14" heads="m-4-4 4 4 4-4M58 8l4-4 4 4" />
    </>
  ),
  wheels: () => (
    <>
      <GroundLine y={44} />
      <g transform="translate(-3 44) scale(.8)">
        <Vehicle y={0} tyres={false} />
        <g class="accented" transform="translate(6 0)">
          <SideWheel x={15} />
          <SideWheel x={46} />
        </g>
      </g>
      <Jack x={60} y={44} height={22} />
      <Cross x={60} y={33} size={8} />
    </>
  ),
};

/** How the vehicle must stand, one picture a step, about 72 × 56 px. */
export function StandingPicture({ step }: { readonly step: StandingPictureName }) {
  const Picture = pictures[step];
  return (
    <Pictogram title={titles[step]}>
      <Picture />
    </Pictogram>
  );
}
