import { useEffect, useState } from "preact/hooks";
import { readAddressPart } from "../records/text/soundText.ts";
import { type DeskRoute, readDeskRoute } from "./desk/deskRoutes.ts";
import { readShareRoute, type ShareRoute } from "./exchange/shareRoutes.ts";
import { type PackRoute, readPackRoute } from "./pack/packRoutes.ts";
import { type QuickCheckRoute, readQuickCheckRoute } from "./quickCheck/quickCheckRoutes.ts";
import { readSavedRoute, type SavedRoute } from "./saved/savedRoute.ts";
import { readSettingsRoute, type SettingsRoute } from "./settings/settingsRoute.ts";

export type Route =
  | ShareRoute
  | PackRoute
  | SavedRoute
  | QuickCheckRoute
  | SettingsRoute
  | { readonly screen: "checks" }
  /** A null step is the one that the check was left at. */
  | { readonly screen: "step"; readonly id: string; readonly step: string | null }
  | { readonly screen: "answer"; readonly id: string }
  /** Which stop of the pack fits the vehicle of this check. */
  | { readonly screen: "stops"; readonly id: string }
  | { readonly screen: "desk"; readonly desk: DeskRoute }
  /** The desk's reply to a check on this phone. */
  | { readonly screen: "reply"; readonly id: string }
  | { readonly screen: "unknown" };

export function readRoute(hash: string): Route {
  const shared = readShareRoute(hash);
  if (shared) return shared;
  const parts = hash
    .replace(/^#?\/?/, "")
    .split("/")
    .filter(Boolean)
    .map(readAddressPart);
  const [first, id, step] = parts;
  if (first === undefined) return { screen: "checks" };
  const own =
    readSavedRoute(parts) ??
    readPackRoute(parts) ??
    readQuickCheckRoute(parts) ??
    readSettingsRoute(parts);
  if (own) return own;
  if (first === "desk") {
    const desk = readDeskRoute(parts.slice(1).map((part) => part ?? ""));
    return desk ? { screen: "desk", desk } : { screen: "unknown" };
  }
  if (first === "reply" && id && parts.length === 2) return { screen: "reply", id };
  if (first !== "check" || !id || parts.length > 3 || step === null) return { screen: "unknown" };
  if (step === "stops") return { screen: "stops", id };
  return step === "answer" ? { screen: "answer", id } : { screen: "step", id, step: step ?? null };
}

export function useRoute(): Route {
  const [hash, setHash] = useState(() => location.hash);
  useEffect(() => {
    const follow = () => setHash(location.hash);
    window.addEventListener("hashchange", follow);
    follow();
    return () => window.removeEventListener("hashchange", follow);
  }, []);
  return readRoute(hash);
}
