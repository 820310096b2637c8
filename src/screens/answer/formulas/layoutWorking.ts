import type { Corner, Fitment } from "../../../physics/fitment.ts";
import { armWorking } from "./armWorking.ts";
import { axleWorking } from "./axleWorking.ts";
import { damperWorking } from "./damperWorking.ts";
import { strutWorking } from "./strutWorking.ts";
import type { LayoutWorking } from "./workedFigure.ts";

/** Undefined where a reading of the geometry is missing. */
export function layoutWorking(fitment: Fitment, corner: Corner): LayoutWorking | undefined {
  switch (fitment.layout.kind) {
    case "arm":
      return armWorking(fitment, corner);
    case "damper":
      return damperWorking(fitment, corner);
    case "strut":
      return strutWorking(fitment, corner);
    case "axle":
      return axleWorking(fitment, corner);
  }
}
