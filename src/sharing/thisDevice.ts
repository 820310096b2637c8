interface AppleNavigator extends Navigator {
  /** Only on Apple's phones and tablets: opened from the home screen. */
  readonly standalone?: boolean;
}

/**
 * An Apple phone or tablet. Told by what only their browsers have, for all of them stand on one engine
 * there, whatever their name, and a tablet may say that it is a desktop.
 */
export function isAppleMobile(): boolean {
  return typeof (globalThis.navigator as AppleNavigator | undefined)?.standalone === "boolean";
}

/** Opened from the home screen or as an app of its own, not as a page of a browser. */
export function isInstalled(): boolean {
  if ((globalThis.navigator as AppleNavigator | undefined)?.standalone === true) return true;
  return globalThis.matchMedia?.("(display-mode: standalone)").matches ?? false;
}

/** In a browser of an Apple phone: what sites store is deleted there after a while without a visit. */
export function isBrowserOnApple(): boolean {
  return isAppleMobile() && !isInstalled();
}

/** Installed there, the app has a storage of its own and no place for downloads of its own. */
export function isInstalledOnApple(): boolean {
  return isAppleMobile() && isInstalled();
}
