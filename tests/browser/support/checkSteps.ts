import type { Locator, Page } from "playwright-core";
import type { Reading } from "../../../src/physics/fitment.ts";
import type { CheckCorner, CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { pick } from "./controls.ts";
import type { Typist } from "./typist.ts";

const useWords = { daily: "Daily driving", towing: "Towing or full load", offroad: "Off-road" };
const roleWords = { installer: "Installer", customer: "Owner", support: "Support" };
const layoutWords: { readonly [kind: string]: string } = {
  arm: "On an arm",
  damper: "On a shock's rod",
  strut: "On a strut",
  axle: "On a beam axle",
};
const limitWords = {
  tyre: "Tire on the fender",
  damper: "Shock at its end",
  spring: "Spring coils closed",
  metal: "Metal on metal",
  other: "Something else",
};
const roleOfArm = {
  lower: "The lower of two arms",
  upper: "The upper of two arms",
  underStrut: "The arm under a strut",
  carriesWheel: "A trailing arm",
};
const meetingWords = { frame: "A flat pad on the arm", arm: "The stop is on the arm" };
const dutyWords = { impact: "Takes impacts", carry: "Supports load" };

const rideLegends = {
  "ride.unsprungMassKg": "Unsprung mass",
  "ride.wheelRateNPerMm": "Rate at the wheel",
  "ride.tyreRateNPerMm": "Tire rate",
} as const;

/** The screens of a check, by what a person reads on them. */
export class CheckSteps {
  /** Off: the ± is that of the tool at hand. */
  typesTolerances = true;

  constructor(
    readonly page: Page,
    readonly typist: Typist,
  ) {}

  get main(): Locator {
    return this.page.locator("main");
  }

  /** The reading or field this screen asks for, as its address names it. */
  get step(): string {
    return decodeURIComponent(new URL(this.page.url()).hash.split("/")[3] ?? "");
  }

  get kept(): Locator {
    return this.page.getByRole("status").filter({ hasText: /^\s*Saved$/ });
  }

  field(name: string | RegExp): Locator {
    return this.main.getByRole("textbox", { name });
  }

  /** The entry of the screen's own reading, apart from others that belong to it. */
  private get ownEntry(): Locator {
    return this.main.locator(".reading-entry").first();
  }

  /** The one big field of a reading's screen; `time` counts repeats from 0. */
  reading(time = 0): Locator {
    return this.ownEntry.getByRole("textbox").nth(time);
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole("button", { name, exact: typeof name === "string" });
  }

  /** What the page says of a field that it can't read; waits until it does. */
  async complaint(field: Locator): Promise<string> {
    await field.and(this.page.locator("[aria-invalid=true]")).waitFor();
    const described = (await field.getAttribute("aria-describedby")) ?? "";
    const message = described.split(" ").find((id) => id.endsWith("-message"));
    const place = message
      ? this.page.locator(`[id="${message}"]`)
      : this.main.locator(".notice-no").first();
    await place.waitFor();
    return (await place.textContent()) ?? "";
  }

  /** Presses a button and waits until another step is shown. */
  async leaveBy(button: Locator): Promise<void> {
    const before = this.step;
    await button.click();
    await this.page.waitForFunction(
      (step) => decodeURIComponent(location.hash.split("/")[3] ?? "") !== step,
      before,
    );
    // What is shown may still be the step before for a moment: its fields must not be filled in.
    await this.page.waitForFunction(() => {
      const shown = document.querySelector<HTMLElement>("[data-step]")?.dataset.step;
      return shown === undefined || shown === decodeURIComponent(location.hash.split("/")[3] ?? "");
    });
    await this.page.getByRole("heading", { level: 1 }).waitFor();
  }

  next(): Promise<void> {
    return this.leaveBy(this.button("Next"));
  }

  back(): Promise<void> {
    return this.leaveBy(this.button("Back"));
  }

  skip(): Promise<void> {
    return this.leaveBy(this.button(/^Skip/));
  }

  async choose(name: string): Promise<void> {
    await pick(this.main.getByRole("radio", { name: new RegExp(`^${name}`) }));
  }

  /** Says yes to what has to be read, to its end first where it is longer than the screen. */
  async acknowledge(): Promise<void> {
    const yes = this.button(/^(I've read all \d+|It stands like this)$/);
    const on = this.button("Read on");
    for (let screens = 0; screens < 20; screens++) {
      // What is in sight to its end counts as read after a moment, without a tap.
      if ((await this.endIsInSight()) || (await yes.isVisible())) {
        await yes.waitFor();
        return this.leaveBy(yes);
      }
      await on.click();
    }
    throw new Error(`The end of "${this.step}" was never reached.`);
  }

  /** Is the last line of what has to be read above the bar of buttons? */
  private endIsInSight(): Promise<boolean> {
    return this.page.evaluate(() => {
      const bottom = document.querySelector("[data-read-end]")?.getBoundingClientRect().bottom;
      const bar = document.querySelector(".action-bar")?.getBoundingClientRect().top;
      return bottom !== undefined && bottom <= (bar ?? innerHeight);
    });
  }

  async tolerance(text: string): Promise<void> {
    await this.ownEntry.getByText(/^Measured with:/).click();
    await this.ownEntry.getByRole("textbox", { name: "Or your own ±" }).fill(text);
  }

  private async typeReading(reading: Reading, kind: "length" | "other"): Promise<void> {
    const write = (value: number) => (kind === "length" ? this.typist.length(value) : `${value}`);
    for (const [time, value] of reading.values.entries()) {
      if (time > 0) await this.addRepeat();
      await this.reading(time).fill(write(value));
    }
    if (!this.typesTolerances) return;
    await this.tolerance(kind === "length" ? this.typist.tolerance(reading.tol) : `${reading.tol}`);
  }

  /** Who has made three checks finds it folded. */
  private async addRepeat(): Promise<void> {
    const more = this.ownEntry.getByRole("button", { name: "Add a repeat", includeHidden: true });
    if (!(await more.isVisible())) await this.ownEntry.getByText("Repeat, photo").click();
    await more.click();
  }

  /** The value of a pair of value and ±. */
  value(legend: string): Locator {
    return this.main.getByRole("group", { name: legend }).getByRole("textbox", { name: "Value" });
  }

  private async typeToleranced(legend: string, text: string): Promise<void> {
    await this.value(legend).fill(text);
  }

  private async typeTable(
    rows: readonly (readonly number[])[],
    names: string[],
    table?: string,
  ): Promise<void> {
    // A record's tables are in metric units, whatever lengths are typed in.
    for (const metric of await this.main.getByRole("radio", { name: /^mm and N/ }).all())
      await pick(metric);
    const named = (words: string) =>
      table ? `${table}, ${words.charAt(0).toLowerCase()}${words.slice(1)}` : words;
    const cell = (row: number, name: string) =>
      this.main.getByRole("textbox", { name: named(`Row ${row}, ${name}`), exact: true });
    for (const [row, values] of rows.entries()) {
      const cells = names.map((name) => cell(row + 1, name));
      if ((await cells[0]?.count()) === 0) await this.button(named("Add a row")).click();
      for (const [place, each] of cells.entries()) await each.fill(`${values[place]}`);
    }
    const spare = cell(rows.length + 1, names[0] ?? "");
    while ((await spare.count()) > 0) {
      await this.button(named(`Remove row ${rows.length + 1}`)).click();
    }
  }

  /**
   * Fills in the screen shown from a complete record: the stop typed or from the parts library, or with a tape
   * alone, who leaves open what a tape does not give, the stop's test sheet among it.
   */
  async fill(record: CheckRecord, stopFrom: "hand" | "pack" | "tape"): Promise<void> {
    const { step } = this;
    const byTape = !/^ride\.|\.cornerMassKg$|^stop\.curve|Angle$|Lean$/.test(step);
    if (stopFrom === "tape" && !byTape) return;
    const side = step.startsWith("right.") ? "right" : "left";
    const corner = record.corners.find((each) => each.side === side) ?? record.corners[0];
    if (!corner) throw new Error("The record has no corner.");
    const limit = corner.limits[Number(/\.limits\.(\d+)$/.exec(step)?.[1] ?? -1)];
    if (limit) await this.fillLimit(limit);
    else if (step.startsWith("ride.")) await this.fillRide(step, record);
    else if (/^stop(\.|$)/.test(step)) await this.fillStop(step, record, stopFrom);
    else await this.fillOther(step, record, corner);
  }

  private async fillLimit(limit: CheckCorner["limits"][number]): Promise<void> {
    await this.typeReading(limit.reading, "length");
    if (limit.at === "arm") {
      await this.placeLimit("Elsewhere on the arm");
      if (limit.distance)
        await this.typeDistance(this.typist.length(limit.distance.values[0] ?? 0));
      return;
    }
    const asked = this.main.getByRole("group", {
      name: "Where would it touch?",
      includeHidden: true,
    });
    if ((await asked.count()) > 0) {
      await this.placeLimit(limit.at === "stop" ? "As closing of the stop" : "Not on the arm");
    } else if (limit.at === "stop") {
      await this.placeLimit("At the stop");
    }
    if (limit.at === "stop") return;
    const closes = this.main.getByText(/^Closes by/);
    const known = (await closes.textContent())?.startsWith(`Closes by ${limit.perWheel} `);
    if (limit.perWheel !== undefined && limit.perWheel !== 1 && !known) {
      await closes.click();
      await this.field("Closing per wheel travel").fill(`${limit.perWheel}`);
    }
  }

  /** How far out on the arm a clearance sits; known from the other side, it stands there already. */
  private async typeDistance(text: string): Promise<void> {
    const distance = this.main.getByRole("textbox", {
      name: /istance from the pivot line/,
      includeHidden: true,
    });
    await distance.waitFor({ state: "attached" });
    if ((await distance.inputValue()) === text) return;
    await distance.fill(text);
  }

  /** Where a clearance sits; settled before, it stands folded for who has made three checks. */
  private async placeLimit(name: string): Promise<void> {
    const folded = this.main.getByText(/^Place: /);
    if ((await folded.count()) > 0) {
      if ((await folded.textContent())?.startsWith(`Place: ${name}`)) return;
      await folded.click();
    }
    await this.choose(name);
  }

  private async fillRide(step: string, { ride }: CheckRecord): Promise<void> {
    const { perLength } = this.typist;
    if (step === "ride.payloadPerCornerKg") {
      await this.choose("I know it for one wheel");
      await this.typeToleranced("Payload on one wheel", `${ride?.payloadPerCornerKg ?? 0}`);
      return;
    }
    await this.choose("I know it");
    if (step === "ride.damperBumpNsPerMm") {
      await this.typeToleranced("In bump", perLength(ride?.damperBumpNsPerMm ?? 0));
      await this.typeToleranced("In rebound", perLength(ride?.damperReboundNsPerMm ?? 0));
      return;
    }
    const name = step as keyof typeof rideLegends;
    const quantity = step.slice("ride.".length) as
      | "unsprungMassKg"
      | "wheelRateNPerMm"
      | "tyreRateNPerMm";
    const value = ride?.[quantity] ?? 0;
    const text = quantity === "unsprungMassKg" ? `${value}` : perLength(value);
    await this.typeToleranced(rideLegends[name], text);
  }

  private async fillStop(step: string, { stop }: CheckRecord, from: "hand" | "pack" | "tape") {
    switch (step) {
      case "stop":
        if (from === "pack") {
          await this.choose("In the parts library");
          await this.choose(stop.name);
        } else {
          await this.choose("I'll type them");
          await this.field("Name of the stop").fill(stop.name);
          await this.choose(dutyWords[stop.duty]);
        }
        return;
      case "stop.freeHeight":
        if (from === "pack") return;
        if (from === "hand") {
          await this.main
            .getByRole("textbox", { name: "Usable compression", exact: true })
            .fill(this.typist.length(stop.usableCompressionMm));
        }
        await this.typeReading(stop.freeHeight, "length");
        return;
      default:
        await this.typeTable(stop.curve, ["pressed by", "force"]);
        if (stop.testedAtSpeed && stop.damping) {
          await this.choose("At several speeds and depths");
          await this.typeTable(stop.damping, ["pressed by", "going in", "coming out"], "Damping");
        } else {
          await this.choose("Only pressed slowly, or not known");
        }
    }
  }

  private async fillOther(step: string, record: CheckRecord, corner: CheckCorner): Promise<void> {
    const { vehicle, layout } = record;
    switch (step.replace(/^(left|right)\./, "")) {
      case "vehicle":
        await this.field("Vehicle").fill(vehicle.label);
        await this.choose(vehicle.liftMm > 0 ? "Yes, raised" : "No");
        if (vehicle.liftMm > 0) {
          await this.field("Raised by").fill(this.typist.length(vehicle.liftMm));
        }
        await this.choose(useWords[vehicle.use]);
        await this.sayWhoMeasures(record.author.role);
        return;
      case "cautions":
      case "standing":
        return;
      case "axle":
        await this.choose(record.axle === "front" ? "Front" : "Rear");
        return this.choose(record.corners.length === 2 ? "Left and right" : "Left only");
      case "layout":
        return this.fillLayout(record);
      case "linkage":
        return this.choose("tyreOffset" in layout.readings ? "Yes, more exact" : "No, this");
      case "pressedHeight":
      case "seatToPad":
        return;
      case "geometry":
        return this.choose("Same as left");
      case "limits":
        for (const { kind } of corner.limits) {
          await pick(this.main.getByRole("checkbox", { name: new RegExp(`^${limitWords[kind]}`) }));
        }
        return;
      case "gap":
        if (corner.gap) return this.typeReading(corner.gap, "length");
        return this.fillStand(corner);
      case "rideHeight":
        if (corner.rideHeight) await this.typeReading(corner.rideHeight, "length");
        return;
      case "cornerMassKg":
        await this.choose("Wheel scale");
        if (corner.cornerMassKg) await this.typeReading(corner.cornerMassKg, "other");
        return;
      case "rules":
      case "finish":
        return;
      default: {
        const readings: { readonly [name: string]: Reading | undefined } = layout.readings;
        const reading = readings[step];
        if (!reading) return;
        const angle = /Angle$|Lean$/.test(step);
        await this.typeReading(reading, angle ? "other" : "length");
        if (step === "pivotToOuter" && layout.wheelPerOuter !== undefined) {
          await this.main.getByText("Wheel moves more than the outer joint?").click();
          await this.field("Wheel travel per joint travel").fill(`${layout.wheelPerOuter}`);
        }
      }
    }
  }

  /** Folded away, and told only where it is not so already. */
  private async sayWhoMeasures(role: CheckRecord["author"]["role"]): Promise<void> {
    const who = this.main.getByText(/^Who is measuring/);
    if ((await who.textContent())?.endsWith(roleWords[role].toLowerCase())) return;
    await who.click();
    await this.choose(roleWords[role]);
  }

  private async fillLayout({ layout }: CheckRecord): Promise<void> {
    await this.choose(layoutWords[layout.kind] ?? layout.kind);
    if (layout.kind !== "arm" && layout.kind !== "damper") return;
    await this.choose(layout.armRole ? roleOfArm[layout.armRole] : "I can't tell");
    if (layout.kind === "arm") {
      await this.choose(layout.stopOn ? meetingWords[layout.stopOn] : "A round part");
    }
  }

  /** A stop that is pressed or missing: said first, then measured. */
  private async fillStand({ pressedHeight, seatToPad }: CheckCorner): Promise<void> {
    const reading = pressedHeight ?? seatToPad;
    await this.choose(pressedHeight ? "Pressed" : "No stop");
    await this.page.getByRole("heading", { level: 1, name: /pressed stop|Seat to pad/ }).waitFor();
    if (reading) await this.typeReading(reading, "length");
  }

  /** The way on as the screen stands: the main button, or the words beside it where it still waits. */
  private async wayOn(): Promise<Locator> {
    if (this.step === "finish") return this.button(/^(Show the answer|Answer without test sheet)$/);
    const skip = this.button(/^Skip/);
    return (await skip.isVisible())
      ? skip
      : this.button("Next").and(this.page.locator("button:not([aria-disabled])"));
  }

  /** On from the step shown to `last`, filling in every screen; "answer" goes all the way. */
  async fillUpTo(
    last: string,
    record: CheckRecord,
    stopFrom: "hand" | "pack",
    onStep: (step: string) => Promise<void> | void = () => undefined,
  ): Promise<void> {
    for (let screens = 0; this.step !== last; screens++) {
      if (screens > 80) throw new Error(`"${last}" was never reached; at "${this.step}".`);
      await this.fill(record, stopFrom);
      await onStep(this.step);
      await this.onward();
    }
  }

  /** From the step shown to the one after it. */
  async onward(): Promise<void> {
    if (this.step === "cautions" || this.step === "standing") return this.acknowledge();
    // What was filled in decides between "Next" and "Skip": let the screen be drawn first.
    await this.page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => setTimeout(done))),
    );
    const onward = await this.wayOn();
    await onward.waitFor({ timeout: 5000 }).catch(async () => {
      const said = (await this.main.locator(".step-content").textContent())?.slice(0, 600);
      throw new Error(`No way on from "${this.step}": ${said}`);
    });
    await this.leaveBy(onward);
  }
}
