import { describe, expect, it } from "vitest";
import { publishedLayout, publishedStops } from "../../published/publishedSuspensions.ts";
import { measured, summary } from "./simulatedMeasuring.ts";

/*
 * A fixed part of the simulated measurings; `npm run measuring` does 405 of them. JCGM 101:2008: a 95 %
 * interval holds the truth in 95 of 100.
 */
const rounds = [1, 2, 3];

describe("measured as the guide says, every published suspension with all that may be measured of it", () => {
  const results = publishedStops.flatMap((stop) =>
    rounds.map((round) =>
      measured(stop, publishedLayout(stop), `${stop.geometry} ${stop.stop} ${round}`),
    ),
  );
  const { count, holds, calledOk, rootMeanSquare } = summary(results);

  it("is told with a 95 % interval that holds full stop in 95 of 100", () => {
    expect(count).toBe(81);
    expect(holds).toBeGreaterThanOrEqual(0.95);
    expect(rootMeanSquare).toBeLessThan(4);
  });

  it("has a reserve of 2 mm called enough in 2 of 100 at most", () => {
    expect(calledOk).toBeLessThanOrEqual(0.02);
  });
});
