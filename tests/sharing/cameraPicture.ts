import type { Pixels } from "../../src/sharing/codeReading.ts";

/** What a camera sees of a code on a screen: turned, in perspective, blurred, with noise. Seeded. */
export interface CameraView {
  readonly width: number;
  readonly height: number;
  /** Camera pixels a module of the code. */
  readonly pixelsPerModule: number;
  /** Standard deviation of the blur, camera pixels. */
  readonly blur: number;
  /** Greatest turn, rad, and greatest share by which one edge is nearer than the other. */
  readonly turn: number;
  readonly perspective: number;
  /** Standard deviation of the noise, of 255. */
  readonly noise: number;
  readonly seed: number;
}

const dark = 40;
const light = 210;
const room = 90;
const quiet = 4;

function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

export function cameraPicture(modules: readonly (readonly boolean[])[], view: CameraView): Pixels {
  const { width, height, pixelsPerModule } = view;
  const next = random(view.seed);
  const between = (greatest: number) => (next() * 2 - 1) * greatest;
  const gauss = () => Math.sqrt(-2 * Math.log(next() + 1e-12)) * Math.cos(2 * Math.PI * next());
  const size = modules.length;
  const side = (size + 2 * quiet) * pixelsPerModule;
  const angle = between(view.turn);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [nearX, nearY] = [between(view.perspective) / side, between(view.perspective) / side];
  const [middleX, middleY] = [width / 2 + between(10), height / 2 + between(10)];

  const shadeAt = (x: number, y: number): number => {
    const depth = 1 + nearX * x + nearY * y;
    const u = (cos * x + sin * y) / depth / pixelsPerModule + size / 2;
    const v = (-sin * x + cos * y) / depth / pixelsPerModule + size / 2;
    if (u < -quiet || v < -quiet || u >= size + quiet || v >= size + quiet) return room;
    return modules[Math.floor(v)]?.[Math.floor(u)] === true ? dark : light;
  };

  const fine = 3;
  let shades = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      for (let part = 0; part < fine * fine; part += 1) {
        const stepX = ((part % fine) + 0.5) / fine - 0.5;
        const stepY = (Math.floor(part / fine) + 0.5) / fine - 0.5;
        sum += shadeAt(x - middleX + stepX, y - middleY + stepY);
      }
      shades[y * width + x] = sum / (fine * fine);
    }
  }
  shades = blurred(shades, width, height, view.blur);

  const data = new Uint8ClampedArray(width * height * 4);
  shades.forEach((shade, index) => {
    data.fill(Math.round(shade + gauss() * view.noise), index * 4, index * 4 + 3);
    data[index * 4 + 3] = 255;
  });
  return { width, height, data };
}

function blurred(
  shades: Float32Array<ArrayBuffer>,
  width: number,
  height: number,
  deviation: number,
): Float32Array<ArrayBuffer> {
  const reach = Math.ceil(3 * deviation);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, index) =>
    Math.exp(-((index - reach) ** 2) / (2 * deviation ** 2)),
  );
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const along = (from: Float32Array, columns: boolean): Float32Array<ArrayBuffer> => {
    const to = new Float32Array(from.length);
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        let sum = 0;
        for (let step = -reach; step <= reach; step += 1) {
          const atX = columns ? x : Math.min(width - 1, Math.max(0, x + step));
          const atY = columns ? Math.min(height - 1, Math.max(0, y + step)) : y;
          sum += (weights[step + reach] ?? 0) * (from[atY * width + atX] ?? 0);
        }
        to[y * width + x] = sum / whole;
      }
    }
    return to;
  };
  return along(along(shades, false), true);
}

/** Twice as large, as a canvas enlarges it: linear between pixels. */
export function enlarged({ width, height, data }: Pixels): Pixels {
  const wide = width * 2;
  const bigger = new Uint8ClampedArray(wide * height * 2 * 4);
  const shade = (x: number, y: number) =>
    data[(Math.min(height - 1, y) * width + Math.min(width - 1, x)) * 4] ?? 0;
  for (let y = 0; y < height * 2; y += 1) {
    for (let x = 0; x < wide; x += 1) {
      const fromX = Math.max(0, (x + 0.5) / 2 - 0.5);
      const fromY = Math.max(0, (y + 0.5) / 2 - 0.5);
      const [left, top] = [Math.floor(fromX), Math.floor(fromY)];
      const [partX, partY] = [fromX - left, fromY - top];
      const above = shade(left, top) * (1 - partX) + shade(left + 1, top) * partX;
      const below = shade(left, top + 1) * (1 - partX) + shade(left + 1, top + 1) * partX;
      const at = (y * wide + x) * 4;
      bigger.fill(Math.round(above * (1 - partY) + below * partY), at, at + 3);
      bigger[at + 3] = 255;
    }
  }
  return { width: wide, height: height * 2, data: bigger };
}
