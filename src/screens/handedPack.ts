import type { Pack } from "../records/pack/pack.ts";

/** A pack that came by a file, a link or a code, on its way to the screen that asks what to do with it. */
interface HandedPack {
  readonly pack: Pack;
  readonly file: string;
}

let handed: HandedPack | null = null;

export function handPack(pack: Pack, file: string): void {
  handed = { pack, file };
}

export function takeHandedPack(): HandedPack | null {
  const taken = handed;
  handed = null;
  return taken;
}
