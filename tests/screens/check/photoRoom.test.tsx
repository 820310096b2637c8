import { cleanup, render, screen } from "@testing-library/preact";
import { afterEach, describe, expect, it, vi } from "vitest";
import { recordBounds } from "../../../src/records/check/recordFormat.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { PhotoField } from "../../../src/screens/check/photo/PhotoField.tsx";
import { withPhoto } from "../../../src/screens/check/photo/photos.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { onePixelPhoto } from "../exchange/support.ts";

afterEach(cleanup);

const other = { ...onePixelPhoto, reading: "left.gap" };

function checkWith(count: number) {
  const record = { ...demoRecord("arm-fits"), photos: Array.from({ length: count }, () => other) };
  return storedFromRecord(record, { unit: "mm" });
}

describe("a photo without room", () => {
  it("is told before it is taken, with where one can be removed, and none is lost", () => {
    const full = checkWith(recordBounds.photos);
    render(<PhotoField id="fitted" of="fitted part" stored={full} change={vi.fn()} />);
    screen.getByText(
      `This check has ${recordBounds.photos} photos, the most it can hold. Remove one at another reading to take this one.`,
    );
    expect(screen.queryByRole("button", { name: "Take photo" })).toBeNull();
    expect(withPhoto(full, { ...onePixelPhoto, reading: "fitted" })).toBe(full);
  });

  it("is asked for while there is room", () => {
    const nearly = checkWith(recordBounds.photos - 1);
    render(<PhotoField id="fitted" of="fitted part" stored={nearly} change={vi.fn()} />);
    screen.getByRole("button", { name: "Take photo" });
    expect(withPhoto(nearly, other).record.photos).toHaveLength(recordBounds.photos);
  });
});
