import { addressPart } from "../../records/text/soundText.ts";

export type PackRoute = { readonly screen: "pack" } & (
  | { readonly place: "list" | "rules" | "merge" }
  /** `new` begins a fresh one. */
  | { readonly place: "stop" | "platform" | "tests"; readonly id: string }
  | { readonly place: "report"; readonly id: string; readonly test: string }
);

export const packRulesHref = "#/pack/rules";
export const packMergeHref = "#/pack/merge";
export const newItem = "new";

export function packItemHref(place: "stop" | "platform" | "tests", id: string): string {
  return `#/pack/${place}/${addressPart(id)}`;
}

/** The page to print of a stop's test. */
export function testReportHref(stop: string, test: string): string {
  return `#/pack/report/${addressPart(stop)}/${addressPart(test)}`;
}

/** The place of an address's parts, or null where it is another one. */
export function readPackRoute(parts: readonly (string | null)[]): PackRoute | null {
  const [first, place, id, test] = parts;
  if (first === "pack" && place === "report" && id && test && parts.length === 4) {
    return { screen: "pack", place, id, test };
  }
  if (first !== "pack" || parts.length > 3) return null;
  if (parts.length === 1) return { screen: "pack", place: "list" };
  if ((place === "rules" || place === "merge") && parts.length === 2) {
    return { screen: "pack", place };
  }
  if ((place === "stop" || place === "platform" || place === "tests") && id) {
    return { screen: "pack", place, id };
  }
  return null;
}
