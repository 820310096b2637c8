import { addressPart } from "../../records/text/soundText.ts";

/** The places of the desk. */
export type DeskRoute =
  | { readonly place: "list" }
  | { readonly place: "findings" }
  | { readonly place: "scan" | "parts" | "people" }
  | { readonly place: "check" | "report"; readonly key: string };

export const deskHref = "#/desk";
export const deskFindingsHref = "#/desk/findings";
export const deskScanHref = "#/desk/scan";

export const deskPartsHref = "#/desk/parts";
export const deskPeopleHref = "#/desk/people";

export function deskCheckHref(key: string): string {
  return `${deskHref}/check/${addressPart(key)}`;
}

export function deskReportHref(key: string): string {
  return `${deskHref}/report/${addressPart(key)}`;
}

/** The place of a route's parts after "desk"; null where there is none. */
export function readDeskRoute(parts: readonly string[]): DeskRoute | null {
  const [place, key] = parts;
  if (place === undefined) return { place: "list" };
  if (place === "findings" && parts.length === 1) return { place };
  if ((place === "scan" || place === "parts" || place === "people") && parts.length === 1) {
    return { place };
  }
  if ((place === "check" || place === "report") && key && parts.length === 2) return { place, key };
  return null;
}
