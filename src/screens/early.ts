// Runs in the page's head, before anything is painted: the build puts it there (vite.config.ts).
import { showAppearance } from "./appearance.ts";
import { isOldBrowser } from "./oldBrowser.ts";
import { readPreferences } from "./storedPreferences.ts";

if (!isOldBrowser()) showAppearance(readPreferences());
