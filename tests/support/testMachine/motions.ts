/** A piece of a test's motion: depth, mm, over its own time, s. */
export interface Motion {
  readonly durationS: number;
  depth(t: number): number;
}

/** From one depth to another at one speed, mm/s. */
export function move(from: number, to: number, speed: number): Motion {
  const durationS = Math.max(1e-9, Math.abs(to - from) / speed);
  return { durationS, depth: (t) => from + ((to - from) * t) / durationS };
}

export function hold(at: number, durationS: number): Motion {
  return { durationS, depth: () => at };
}

/** A slow ramp in and out. */
export function ramp(from: number, to: number, speed: number): readonly Motion[] {
  return [move(from, to, speed), move(to, from, speed)];
}

/** Whole cycles between two depths that begin and end at the lesser one; greatest speed in mm/s. */
export function sine(low: number, high: number, speed: number, cycles: number): Motion {
  const amplitude = (high - low) / 2;
  const omega = speed / amplitude;
  return {
    durationS: (2 * Math.PI * cycles) / omega,
    depth: (t) => low + amplitude * (1 - Math.cos(omega * t)),
  };
}

/** Cycles at one speed in and out. */
export function triangle(low: number, high: number, speed: number, cycles: number): Motion {
  const half = (high - low) / speed;
  return {
    durationS: 2 * half * cycles,
    depth: (t) => {
      const phase = (t / half) % 2;
      return low + (high - low) * (phase < 1 ? phase : 2 - phase);
    },
  };
}

/** The pieces one after another, joined at 20 mm/s, with a rest of this many seconds between. */
export function sequence(pieces: readonly Motion[], restS = 0.5): Motion {
  const all: Motion[] = [];
  let at = pieces[0]?.depth(0) ?? 0;
  for (const piece of pieces) {
    const start = piece.depth(0);
    if (Math.abs(start - at) > 1e-6) all.push(move(at, start, 20));
    if (restS > 0) all.push(hold(start, restS));
    all.push(piece);
    at = piece.depth(piece.durationS);
  }
  const starts: number[] = [];
  let total = 0;
  for (const { durationS } of all) {
    starts.push(total);
    total += durationS;
  }
  let place = 0;
  return {
    durationS: total,
    depth: (t) => {
      if (t < (starts[place] as number)) place = 0;
      while (place < all.length - 1 && t >= (starts[place + 1] as number)) place++;
      const piece = all[place] as Motion;
      return piece.depth(Math.min(piece.durationS, t - (starts[place] as number)));
    },
  };
}
