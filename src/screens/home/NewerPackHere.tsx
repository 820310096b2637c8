import type { NewerPackProps } from "../pack/NewerPack.tsx";
import { later } from "../parts/later.tsx";
import { shippedDigest } from "../shippedBuild.ts";

const NewerPack = later<NewerPackProps>(
  async () => (await import("../pack/NewerPack.tsx")).NewerPack,
  { quiet: true },
);

/** On the list, where the app ships a maker's pack: whether there is a newer one. */
export function NewerPackHere() {
  return shippedDigest === null ? null : <NewerPack />;
}
