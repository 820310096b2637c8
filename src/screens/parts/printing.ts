import { isInstalledOnApple } from "../../sharing/thisDevice.ts";

/** Installed on an Apple phone an app has no way to print (from memory); some browsers have none at all. */
export function canPrint(): boolean {
  return typeof globalThis.print === "function" && !isInstalledOnApple();
}

export function printPage(): void {
  globalThis.print();
}
