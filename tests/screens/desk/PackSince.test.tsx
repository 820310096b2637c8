import { cleanup, render, screen } from "@testing-library/preact";
import { afterEach, expect, it } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { takenFrom } from "../../../src/records/pack/pack.ts";
import { PackSince } from "../../../src/screens/desk/PackSince.tsx";
import { demoRecord } from "../answer/demoChecks.ts";

afterEach(cleanup);

it("the desk says in what its pack and a check differ, and nothing where they do not", () => {
  const record = demoRecord("arm-fits");
  const { container } = render(<PackSince record={record} pack={demoPack} unit="mm" />);
  expect(container.textContent).toBe("");
  cleanup();
  const [platform] = demoPack.platforms;
  if (!platform) throw new Error("no platform");
  const reference = takenFrom(demoPack, {
    platform: { ...platform, ride: { ...platform.ride, wheelRateNPerMm: 99 } },
  });
  const sent = {
    ...record,
    vehicle: { ...record.vehicle, platformId: platform.id },
    stop: { ...record.stop, usableCompressionMm: 30 },
    ...(reference && { reference }),
  };
  render(<PackSince record={sent} pack={demoPack} unit="mm" />);
  screen.getByText(
    /has the stop “Tall progressive” with other figures than this check: usable compression/,
  );
  screen.getByText(/otherwise than when this check took it: wheel rate/);
});
