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

/** `replace` leaves no way back to the address before. */
export function goTo(href: string, { replace = false }: { replace?: boolean } = {}): void {
  if (replace) {
    history.replaceState(history.state, "", href);
    window.dispatchEvent(new HashChangeEvent("hashchange"));
  } else {
    location.hash = href;
  }
}
