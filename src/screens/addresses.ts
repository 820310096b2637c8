import { addressPart } from "../records/text/soundText.ts";

export const checksHref = "#/";
export const labelsHref = "#/labels";
export const packHref = "#/pack";
export const sendPackHref = "#/send-pack";

export function stepHref(id: string, step?: string): string {
  const base = `#/check/${addressPart(id)}`;
  return step === undefined ? base : `${base}/${addressPart(step)}`;
}

export function answerHref(id: string): string {
  return stepHref(id, "answer");
}

/**
 * `replace` leaves no way back to the address before. What goes on by itself says `within` which addresses:
 * somebody who has just gone elsewhere is not taken back.
 */
export function goTo(
  href: string,
  { replace = false, within = "" }: { replace?: boolean; within?: string } = {},
): void {
  if (!location.hash.startsWith(within)) return;
  if (replace) {
    history.replaceState(history.state, "", href);
    window.dispatchEvent(new HashChangeEvent("hashchange"));
  } else {
    location.hash = href;
  }
}
