import { describe, expect, it } from "vitest";
import { deskCheckHref, deskReportHref } from "../../../src/screens/desk/deskRoutes.ts";
import { mailLink } from "../../../src/screens/desk/replyItems.ts";
import { replyHref } from "../../../src/screens/exchange/reply/replyRoute.ts";
import { packItemHref } from "../../../src/screens/pack/packRoutes.ts";
import { demoRecord } from "../answer/demoChecks.ts";

const half = "\ud83d";

describe("addresses", () => {
  it("of a mail hold whatever the check is called", () => {
    const record = demoRecord("arm-fits");
    const named = {
      ...record,
      vehicle: { ...record.vehicle, label: `Marlow ${half}` },
      author: { ...record.author, contact: "lind@example.org" },
    };
    const link = mailLink(named, `Hello ${half},\nit fits.`);
    expect(link).toContain("subject=Your%20check%3A%20Marlow%20%EF%BF%BD");
    expect(link).toContain("body=Hello%20%EF%BF%BD%2C%0D%0A");
  });

  it("of a check, a reply, a report and a stop hold any id", () => {
    for (const href of [
      deskCheckHref(half),
      deskReportHref(half),
      replyHref(half),
      packItemHref("stop", half),
    ]) {
      expect(href).toMatch(/\/%EF%BF%BD$/);
    }
  });
});
