/** The places of opening what others sent. `open` with a payload is a link or a code. */
export type ShareRoute =
  | { readonly screen: "open"; readonly payload: string | null }
  | { readonly screen: "scan" }
  | { readonly screen: "received" }
  /** The pack in use, to be handed over. */
  | { readonly screen: "sendPack" };

export const openHref = "#/open";
export const scanHref = "#/scan";
export const receivedHref = "#/received";

/** The share route of an address's part after #, or null where it is another place. */
export function readShareRoute(hash: string): ShareRoute | null {
  const path = hash.replace(/^#?\/?/, "");
  if (path === "scan") return { screen: "scan" };
  if (path === "send-pack") return { screen: "sendPack" };
  if (path === "received") return { screen: "received" };
  if (path === "open" || path === "open/") return { screen: "open", payload: null };
  return path.startsWith("open/") ? { screen: "open", payload: path.slice("open/".length) } : null;
}
