import type {
  CheckCorner,
  CheckLayout,
  CheckLimit,
  CheckRecord,
  CheckStop,
  Role,
  TypedReading,
} from "../../src/records/check/checkRecord.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { recordStop } from "../../src/records/pack/pack.ts";

/** Repeatable numbers from 0 to 1 (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const vehicles = ["Marlow 2.4", "Tern Estate", "Brant Pickup", "Osprey Van", "Marlow 3.0 Long"];
const people = ["R. Hale", "J. Okoro", "M. Lind", "T. Varga", "A. Sato", "K. Brandt", ""];
const oddities = ["unitSlip", "scatter", "leftRight"] as const;

class Generator {
  readonly #random: () => number;

  constructor(seed: number) {
    this.#random = randomFrom(seed);
  }

  between(least: number, greatest: number): number {
    return Math.round((least + this.#random() * (greatest - least)) * 10) / 10;
  }

  chance(share: number): boolean {
    return this.#random() < share;
  }

  one<Item>(items: readonly Item[]): Item {
    const item = items[Math.floor(this.#random() * items.length)];
    if (item === undefined) throw new Error("nothing to choose from");
    return item;
  }

  hex(digits: number): string {
    return Array.from({ length: digits }, () => Math.floor(this.#random() * 16).toString(16)).join(
      "",
    );
  }

  uuid(): string {
    return `${this.hex(8)}-${this.hex(4)}-4${this.hex(3)}-a${this.hex(3)}-${this.hex(12)}`;
  }

  /** A length read once to three times, in mm or in sixteenths of an inch. */
  length(mm: number, inches: boolean, tol: number): TypedReading {
    const count = 1 + Math.floor(this.#random() * 3);
    if (!inches) {
      const values = Array.from(
        { length: count },
        () => Math.round((mm + (this.#random() - 0.5) * tol) * 2) / 2,
      );
      return { values, tol, typed: values.map((value) => `${value} mm`) };
    }
    const sixteenths = Array.from({ length: count }, () =>
      Math.max(1, Math.round(((mm + (this.#random() - 0.5) * tol) / 25.4) * 16)),
    );
    return {
      values: sixteenths.map((n) => (n / 16) * 25.4),
      tol,
      typed: sixteenths.map((n) =>
        n % 16 === 0 ? `${n / 16} in` : `${n < 16 ? "" : `${Math.floor(n / 16)} `}${n % 16}/16 in`,
      ),
    };
  }

  angle(degrees: number): TypedReading {
    return { values: [Math.round(degrees * 2) / 2], tol: 0.5 };
  }

  layout(inches: boolean): CheckLayout {
    const kind = this.one(["arm", "arm", "damper", "strut", "axle"] as const);
    const long = this.between(330, 480);
    if (kind === "arm") {
      return {
        kind,
        readings: {
          pivotToStop: this.length(this.between(130, 230), inches, 2),
          pivotToOuter: this.length(long, inches, 2),
          armAngle: this.angle(this.between(-5, 18)),
          stopLean: this.angle(this.between(-8, 12)),
        },
      };
    }
    if (kind === "damper") {
      return {
        kind,
        readings: {
          pivotToMount: this.length(this.between(180, 300), inches, 2),
          pivotToOuter: this.length(long, inches, 2),
          armAngle: this.angle(this.between(0, 14)),
          stopLean: this.angle(this.between(0, 20)),
          damperLength: this.length(this.between(380, 560), inches, 2),
        },
      };
    }
    if (kind === "strut") return { kind, readings: { stopLean: this.angle(this.between(2, 14)) } };
    return {
      kind,
      readings: {
        track: this.length(this.between(1450, 1700), inches, 5),
        stopSpacing: this.length(this.between(850, 1150), inches, 5),
      },
    };
  }

  stop(inches: boolean): CheckStop {
    const stop = recordStop(this.one(demoPack.stops));
    const [height = 60] = stop.freeHeight.values;
    return { ...stop, freeHeight: this.length(height, inches, 1) };
  }

  /** The room there is at the stop, and at the wheel over the tyre where that was measured. */
  room(gap: number, stop: CheckStop, ratio: number): { damper: number; tyre: number | null } {
    const damper = gap + stop.usableCompressionMm * this.between(0.9, 1.9);
    return { damper, tyre: this.chance(0.6) ? damper * ratio * this.between(0.95, 1.3) : null };
  }

  limits({ damper, tyre }: { damper: number; tyre: number | null }, inches: boolean): CheckLimit[] {
    return [
      { kind: "damper", at: "stop", reading: this.length(damper, inches, 2) },
      ...(tyre === null
        ? []
        : [{ kind: "tyre" as const, at: "wheel" as const, reading: this.length(tyre, inches, 3) }]),
    ];
  }

  record(index: number): CheckRecord {
    const inches = this.chance(0.4);
    const layout = this.layout(inches);
    const stop = this.stop(inches);
    const ratio = layout.kind === "arm" || layout.kind === "damper" ? 2 : 1;
    const gap = this.between(10, 60);
    const mass = this.between(320, 640);
    const room = this.room(gap, stop, ratio);
    const measured = this.chance(0.95);
    const corners = (this.chance(0.85) ? (["left", "right"] as const) : (["left"] as const)).map(
      (side): CheckCorner => ({
        side,
        gap: this.length(gap + this.between(-2, 2), inches, 1),
        rideHeight: this.length(this.between(480, 500), inches, 2),
        ...(this.chance(0.85) && {
          cornerMassKg: { values: [Math.round(mass + this.between(-8, 8))], tol: 10 },
        }),
        limits: measured ? this.limits(room, inches) : [],
      }),
    );
    const name = this.one(people);
    const createdAt = new Date(
      Date.UTC(2026, 0, 5, 8) + Math.floor(this.#random() * 300 * 86_400_000),
    ).toISOString();
    const record: CheckRecord = {
      format: "stopfit-check",
      version: 2,
      id: this.uuid(),
      createdAt,
      author: {
        role: this.one<Role>(["installer", "installer", "customer", "support"]),
        ...(name && { name }),
        ...(this.chance(0.5) && { contact: `person${index}@example.com` }),
      },
      vehicle: {
        label: `${this.one(vehicles)} ${index + 1}`,
        platformId: null,
        liftMm: this.chance(0.5) ? 0 : this.between(20, 80),
        use: this.one(["daily", "towing", "offroad"]),
      },
      axle: this.one(["front", "rear"]),
      layout,
      corners,
      stop,
      ...(this.chance(0.9) && {
        ride: {
          unsprungMassKg: this.between(40, 70),
          wheelRateNPerMm: this.between(22, 45),
          tyreRateNPerMm: this.between(200, 300),
          damperBumpNsPerMm: this.between(1.4, 2.6),
          damperReboundNsPerMm: this.between(2.4, 5.2),
          payloadPerCornerKg: Math.round(this.between(0, 120)),
        },
      }),
      ...(this.chance(0.2) && { notes: `Measured on the level floor, bay ${(index % 4) + 1}.` }),
    };
    return this.chance(0.1) ? withOddity(record, this.one(oddities)) : record;
  }
}

function withOddity(record: CheckRecord, oddity: (typeof oddities)[number]): CheckRecord {
  const [first, ...rest] = record.corners;
  const gap = first?.gap;
  if (first === undefined || gap === undefined) return record;
  const [value = 20] = gap.values;
  const changed: TypedReading =
    oddity === "unitSlip"
      ? { values: [value / 25.4], tol: gap.tol }
      : oddity === "scatter"
        ? { values: [value, value + 8], tol: 1 }
        : { values: [value + 15], tol: gap.tol };
  return { ...record, corners: [{ ...first, gap: changed }, ...rest] };
}

/** Varied records of invented vehicles, always the same for one seed: fits, does not fit, odd readings. */
export function* generateRecords(
  count: number,
  seed = 1,
): globalThis.Generator<CheckRecord, void, void> {
  const generator = new Generator(seed);
  for (let index = 0; index < count; index += 1) yield generator.record(index);
}
