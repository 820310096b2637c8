import { isMailAddress } from "../text/mailto.ts";
import type { Maker } from "./pack.ts";

/** How a maker can be reached, told apart; null: not by this. */
export interface MakerWays {
  readonly mail: string | null;
  readonly phone: string | null;
  /** On an envelope and on the head of a letter, never where a file goes. */
  readonly post: string | null;
}

function isPhone(text: string): boolean {
  return /^[+(]?\d[\d\s().+/-]{4,24}$/.test(text);
}

/** The parts of what was typed that are no mail address, and the first mail address in it. */
function readContact(text: string): { readonly mail: string | null; readonly rest: string[] } {
  const words = text.split(/[\s,;]+/);
  const mail = words.find(isMailAddress) ?? null;
  const rest = text.split(/[,;\n]/).map((part) =>
    part
      .split(/\s+/)
      .filter((word) => !isMailAddress(word))
      .join(" ")
      .trim(),
  );
  return { mail, rest };
}

/** Of what the pack says as address and contact: older packs have a mail address as the address. */
export function makerWays({ address = "", contact = "" }: Partial<Maker>): MakerWays {
  const told = readContact(contact);
  const whole = address.trim();
  const mailAsAddress = isMailAddress(whole) ? whole : null;
  return {
    mail: told.mail ?? mailAsAddress,
    phone: told.rest.find(isPhone) ?? null,
    post: whole === "" || mailAsAddress !== null ? null : whole,
  };
}
