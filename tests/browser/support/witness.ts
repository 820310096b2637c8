import type { BrowserContext } from "playwright-core";

/** What one frame of a page showed of a step. */
interface Frame {
  readonly check: string;
  /** The step, by its heading. */
  readonly heading: string;
  /** What stood in its fields. */
  readonly texts: readonly string[];
  /** Whether the page said “Saved”. */
  readonly kept: boolean;
}

/** What the screen showed of one step over time, the same state only once in a row. */
type Shown = Omit<Frame, "check" | "heading">[];

export interface Claim {
  readonly check: string;
  readonly heading: string;
  /** The fields as the screen last called them kept, and everything shown since. */
  readonly allowed: readonly (readonly string[])[];
}

/**
 * Watches what the pages of a context say, frame by frame, as a person would. A reading is acknowledged
 * when it stands on the screen together with the word “Kept”: from then on it must be there, or something
 * typed after it.
 */
export class Witness {
  readonly #shown = new Map<string, Map<string, Shown>>();

  static async of(context: BrowserContext): Promise<Witness> {
    const witness = new Witness();
    await context.exposeBinding("stopfitShown", (_, frame: Frame) => witness.#take(frame));
    await context.addInitScript(watchFrames);
    return witness;
  }

  #take({ check, heading, texts, kept }: Frame): void {
    const steps = this.#shown.get(check) ?? new Map<string, Shown>();
    this.#shown.set(check, steps);
    const shown = steps.get(heading) ?? [];
    steps.set(heading, shown);
    shown.push({ texts, kept });
  }

  /** What is owed of a check: for each of its steps the last that was called kept, or what came after. */
  claims(check: string): Claim[] {
    const steps = this.#shown.get(check) ?? new Map<string, Shown>();
    return [...steps].flatMap(([heading, shown]) => {
      const last = shown.findLastIndex(({ kept }) => kept);
      if (last < 0) return [];
      return [{ check, heading, allowed: shown.slice(last).map(({ texts }) => texts) }];
    });
  }
}

/** Runs in the page. */
function watchFrames(): void {
  const report = (globalThis as unknown as { stopfitShown(frame: object): void }).stopfitShown;
  let before = "";
  const look = (): void => {
    const check = /^#\/check\/([^/]+)/.exec(location.hash)?.[1];
    const heading = document.querySelector(".step-content h1")?.textContent;
    const line = document.querySelector(".saved-line")?.textContent?.trim();
    if (check === undefined || !heading || line === undefined) return;
    const fields = [
      ...document.querySelectorAll<HTMLInputElement>(".step-content input[type=text]"),
    ];
    const frame = {
      check,
      heading,
      texts: fields.map(({ value }) => value),
      kept: line === "Saved",
    };
    const text = JSON.stringify(frame);
    if (text === before) return;
    before = text;
    report(frame);
  };
  const lookEachFrame = (): void => {
    requestAnimationFrame(lookEachFrame);
    look();
  };
  requestAnimationFrame(lookEachFrame);
}

/** Faults tried, readings that had been acknowledged when they struck, and how many were gone. */
export class Tally {
  readonly #lines = new Map<string, { faults: number; readings: number; lost: number }>();

  add(fault: string, readings: number, lost: number): void {
    const line = this.#lines.get(fault) ?? { faults: 0, readings: 0, lost: 0 };
    this.#lines.set(fault, {
      faults: line.faults + 1,
      readings: line.readings + readings,
      lost: line.lost + lost,
    });
  }

  get total(): { faults: number; readings: number; lost: number } {
    return [...this.#lines.values()].reduce(
      (sum, { faults, readings, lost }) => ({
        faults: sum.faults + faults,
        readings: sum.readings + readings,
        lost: sum.lost + lost,
      }),
      { faults: 0, readings: 0, lost: 0 },
    );
  }

  get text(): string {
    const rows = [...this.#lines, ["all", this.total] as const].map(
      ([fault, { faults, readings, lost }]) =>
        `${fault.padEnd(44)}${String(faults).padStart(6)}${String(readings).padStart(10)}${String(lost).padStart(6)}`,
    );
    const head = `${"fault".padEnd(44)}${"tried".padStart(6)}${"readings".padStart(10)}${"lost".padStart(6)}`;
    return [head, ...rows].join("\n");
  }
}
