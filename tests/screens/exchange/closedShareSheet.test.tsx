import { fireEvent, render, screen, waitFor } from "@testing-library/preact";
import { expect, it, vi } from "vitest";
import type { Decision } from "../../../src/records/review/decision.ts";
import { CardDialog } from "../../../src/screens/answer/card/CardDialog.tsx";
import { ReplyWays } from "../../../src/screens/desk/ReplyWays.tsx";
import { assessed, demoFitment, demoRecord } from "../answer/demoChecks.ts";
import { withShareSheet } from "../shareSheet.ts";

// An Apple phone's installed app has no place for downloads: what is saved goes by its share sheet.

const sheet = withShareSheet(false);

/** As much of a canvas as a picture of words needs. */
function canvasThatDraws(): void {
  vi.stubGlobal("Path2D", class {});
  const context = new Proxy({} as Record<string, unknown>, {
    get: (held, name) =>
      name === "measureText"
        ? (text: string) => ({ width: 10 * text.length })
        : (held[String(name)] ?? (() => undefined)),
  });
  vi.spyOn(HTMLCanvasElement.prototype, "getContext").mockReturnValue(
    context as unknown as ReturnType<HTMLCanvasElement["getContext"]>,
  );
  vi.spyOn(HTMLCanvasElement.prototype, "toBlob").mockImplementation((told) =>
    told(new Blob(["picture"], { type: "image/png" })),
  );
}

async function savedBy(button: string): Promise<void> {
  const save = await waitFor(() => {
    const found = screen.getByRole<HTMLButtonElement>("button", { name: button });
    expect(found.disabled).toBe(false);
    return found;
  });
  fireEvent.click(save);
}

it("a picture of the card is only said to be saved where the share sheet took it", async () => {
  canvasThatDraws();
  render(
    <CardDialog
      record={demoRecord("arm-fits")}
      assessment={assessed(demoFitment("arm-fits"))}
      prescribing={{ state: "searching", progress: null }}
      unit="mm"
      onLeave={() => undefined}
    />,
  );
  sheet.isClosed = true;
  await savedBy("Save the picture");
  await screen.findByText("The picture is not saved: you closed the share sheet.");
  expect(screen.queryByText(/handed over/)).toBeNull();
  sheet.isClosed = false;
  await savedBy("Save the picture");
  await screen.findByText("The picture was handed over to be saved.");
  expect(screen.queryByText(/not saved/)).toBeNull();
  expect(sheet.shared).toEqual(["stopfit-Marlow-4-door-utility-2026-05-02.png"]);
});

it("a reply file is only said to be saved where the share sheet took it", async () => {
  const decision: Decision = {
    key: "5a1c7c9e-0000-4000-8000-000000000001",
    checkId: demoRecord("arm-fits").id,
    submission: "one",
    kind: "accept",
    by: "Review desk",
    at: "2026-05-04T08:00:00.000Z",
    note: "",
    reply: "Fitted as it is.",
  };
  render(<ReplyWays record={demoRecord("arm-fits")} decision={decision} />);
  sheet.isClosed = true;
  await savedBy("Save the reply file");
  await screen.findByText("The reply file is not saved: you closed the share sheet.");
  expect(screen.queryByText(/handed over/)).toBeNull();
  sheet.isClosed = false;
  await savedBy("Save the reply file");
  await screen.findByText("The reply file was handed over to be saved.");
  expect(screen.queryByText(/not saved/)).toBeNull();
  expect(sheet.shared).toEqual([`stopfit-reply-${decision.checkId.slice(0, 8)}-2026-05-04.txt`]);
});
