import { describe, expect, it } from "vitest";
import { poolWork } from "../../../src/compute/poolWork.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { type Decision, deskChecks } from "../../../src/records/review/decision.ts";
import { judgedAtDesk, otherDemands } from "../../../src/records/review/deskDemands.ts";
import type { Listed } from "../../../src/records/review/listedSubmission.ts";
import { isReadAgain } from "../../../src/records/review/oddReading.ts";
import { oddReadings } from "../../../src/records/review/oddReadings.ts";
import { factsOf } from "../../../src/records/review/submission.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const plainPack = { platforms: [] };
const record = demoRecord("arm-needs-taller");
const lenient: CheckRecord = {
  ...record,
  rules: {
    reserveMm: 0,
    allowedContactsPerKm: 1_000_000,
    accelerationCapG: 1000,
    roadKurtosis: 3,
    events: [{ kind: "landing", heightM: 1e-6 }],
  },
};
const verdictOf = (checked: CheckRecord) => {
  const done = poolWork({ kind: "compute", text: JSON.stringify(checked) }, plainPack);
  return done.kind === "computed" ? done.computed : null;
};
const kindsOf = (checked: CheckRecord, now?: Date) =>
  oddReadings(checked, plainPack, now).map(({ kind, reading }) => `${kind} ${reading}`);

describe("a check's own demands", () => {
  it("change no verdict at the desk: it judges by its own", () => {
    const { rules: _, ...usual } = record;
    expect(verdictOf(usual)?.verdict).toBe("no");
    expect(verdictOf(lenient)?.verdict).toBe("no");
    expect(verdictOf(lenient)?.odd).toBeGreaterThan(verdictOf(usual)?.odd ?? 0);
  });

  it("that are this desk's or the usual ones are no other demands", () => {
    const { rules: _, ...usual } = record;
    expect(otherDemands(usual, plainPack)).toEqual([]);
    const house = { platforms: [], rules: { [record.vehicle.use]: { reserveMm: 8 } } };
    expect(judgedAtDesk(lenient, house).rules).toEqual({ reserveMm: 8 });
    expect(judgedAtDesk(lenient, null)).not.toHaveProperty("rules");
    expect(otherDemands({ ...usual, rules: { reserveMm: 8 } }, house)).toEqual([]);
    expect(otherDemands(usual, house).map(({ name }) => name)).toEqual(["reserveMm"]);
  });

  it("are pointed out one by one, with this desk's beside them, and can't be asked for again", () => {
    const odd = oddReadings(lenient, plainPack).filter(({ kind }) => kind === "demand");
    expect(odd.map(({ reading }) => reading).sort()).toEqual([
      "rules.accelerationCapG",
      "rules.allowedContactsPerKm",
      "rules.events",
      "rules.reserveMm",
      "rules.roadKurtosis",
    ]);
    expect(odd.some(isReadAgain)).toBe(false);
    const said = odd.map(({ sentence }) => inModelUnits(sentence));
    expect(said).toContain("The check's own reserve wanted: 0.0 mm. Judged here by 5.0 mm.");
  });
});

describe("what a check claims of itself", () => {
  const [left, ...others] = record.corners;
  if (left?.gap === undefined) throw new Error("no gap");
  const withGap = (gap: object): CheckRecord =>
    ({ ...record, corners: [{ ...left, gap: { ...left.gap, ...gap } }, ...others] }) as CheckRecord;
  const place = `${left.side}.gap`;

  it("a text that is another number than the value beside it", () => {
    expect(kindsOf(withGap({ values: [12], typed: ["77 mm"] }))).toContain(`typed ${place}`);
    expect(kindsOf(withGap({ values: [12], typed: ["a thumb"] }))).toContain(`typed ${place}`);
    for (const typed of [["12 mm"], ["12"], ["0.4724 in"], ["12,0"], [""], undefined]) {
      expect(kindsOf(withGap({ values: [12], typed }))).not.toContain(`typed ${place}`);
    }
    // Inches without their unit, as some write them.
    expect(kindsOf(withGap({ values: [25.4], typed: ["1"] }))).not.toContain(`typed ${place}`);
  });

  it("a reading that is exact, where it was measured", () => {
    expect(kindsOf(withGap({ tol: 0 }))).toContain(`noTolerance ${place}`);
    expect(kindsOf(withGap({ tol: 0, source: "pack" }))).not.toContain(`noTolerance ${place}`);
    const stop = { ...record.stop, usableTolMm: 0 };
    expect(kindsOf({ ...record, stop })).toContain("noTolerance stop.usableCompressionMm");
  });

  it("a date that lies ahead", () => {
    const now = new Date("2026-05-02T12:00:00Z");
    const begun = (createdAt: string) => kindsOf({ ...record, createdAt }, now);
    expect(begun("9999-12-31T00:00:00.000Z")).toContain("date createdAt");
    expect(begun("2026-05-02T11:59:00.000Z")).not.toContain("date createdAt");
  });

  it("of the demo checks is nothing but their demands, where they have any", () => {
    for (const name of ["arm-fits", "axle-towing-early", "damper-shaft", "strut-too-stiff"]) {
      const odd = oddReadings(demoRecord(name), demoPack);
      expect([name, odd.filter(({ kind }) => kind === "typed" || kind === "date")]).toEqual([
        name,
        [],
      ]);
    }
  });
});

describe("dates that lie ahead", () => {
  const listed = (key: string, receivedAt: string): Listed => ({
    ...factsOf(record),
    key,
    receivedAt,
    way: "file",
    photosLeftOut: 0,
    isComputed: 0,
  });
  const decision = (key: string, at: string, kind: Decision["kind"]): Decision => ({
    key,
    checkId: record.id,
    submission: "new",
    kind,
    by: "M. Lind",
    at,
    note: "",
  });

  it("make no version and no decision the newest", () => {
    const ahead = "9999-12-31T00:00:00.000Z";
    const all = [listed("planted", ahead), listed("new", "2026-05-02T10:00:00.000Z")];
    const decisions = [
      decision("planted", ahead, "accept"),
      decision("own", "2026-05-02T11:00:00.000Z", "askAgain"),
    ];
    const [check] = deskChecks(all, decisions);
    expect(check?.latest.key).toBe("new");
    expect(check?.state).toBe("askedAgain");
    expect(check).not.toHaveProperty("fromBackup");
    const taken = { ...decision("old", "2026-05-03T10:00:00.000Z", "accept"), fromBackup: ahead };
    expect(deskChecks(all, [...decisions, taken])[0]).toMatchObject({
      state: "accepted",
      fromBackup: true,
    });
  });
});
