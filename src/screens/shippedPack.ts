import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { demoPack } from "../records/pack/demoPack.ts";
import { openPack, type Pack } from "../records/pack/pack.ts";
import * as messages from "../words/compiled/screens.ts";
import { shippedDigest, shippedFile } from "./shippedBuild.ts";

/** What is known of the shipped pack before it is fetched: of a maker's, its name and its maker. */
export const shippedHead: Pack = demoPack;

/** The whole shipped pack, a file of this very release: at hand without a signal. */
export async function shippedPack(): Promise<Outcome<Pack>> {
  if (shippedDigest === null) return succeed(demoPack);
  try {
    const response = await fetch(`./${shippedFile}`);
    if (response.ok) return succeed(openPack((await response.json()) as Pack));
  } catch {
    // No signal, and the release is not kept yet.
  }
  return fail("packNotHere", [messages.partsLibraryThatCame]);
}
