import { barlow1972 } from "./barlow1972.ts";
import { commonPractice } from "./commonPractice.ts";
import { crc32Source } from "./crc32.ts";
import { dahlberg1978 } from "./dahlberg1978.ts";
import { dormandPrince } from "./dormandPrince.ts";
import { droppedWeight } from "./droppedWeight.ts";
import { gent1958 } from "./gent1958.ts";
import { harmonicLoop } from "./harmonicLoop.ts";
import { independentImplementation } from "./independentImplementation.ts";
import { iso3 } from "./iso3.ts";
import { iso8608 } from "./iso8608.ts";
import { jcgm100 } from "./jcgm100.ts";
import { jcgm101 } from "./jcgm101.ts";
import { jcgm106 } from "./jcgm106.ts";
import { lindley } from "./lindley.ts";
import { nistSp811 } from "./nistSp811.ts";
import { odex } from "./odex.ts";
import { oimlR35 } from "./oimlR35.ts";
import { publishedSuspensions } from "./publishedSuspensions.ts";
import { rfc4648 } from "./rfc4648.ts";
import { rice1944 } from "./rice1944.ts";
import { scipyPchip } from "./scipyPchip.ts";
import { shigleyCoilSpring } from "./shigleyCoilSpring.ts";
import { sinusoidalHump } from "./sinusoidalHump.ts";
import { springDashpotContact } from "./springDashpotContact.ts";
import { standardLinearSolid } from "./standardLinearSolid.ts";
import type { PublishedSource } from "./support/published.ts";
import { xoshiro128starstar } from "./xoshiro128starstar.ts";

/** Every source, one file each, in the order of the table in README.md. */
export const sources: readonly PublishedSource[] = [
  independentImplementation,
  odex,
  jcgm100,
  jcgm101,
  jcgm106,
  commonPractice,
  scipyPchip,
  dormandPrince,
  droppedWeight,
  springDashpotContact,
  standardLinearSolid,
  sinusoidalHump,
  dahlberg1978,
  rice1944,
  iso8608,
  iso3,
  nistSp811,
  oimlR35,
  harmonicLoop,
  barlow1972,
  gent1958,
  lindley,
  shigleyCoilSpring,
  ...publishedSuspensions,
  xoshiro128starstar,
  crc32Source,
  rfc4648,
];
