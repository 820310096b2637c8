import type { Author } from "../records/check/checkRecord.ts";
import { isToolId, type ToolGroup, type ToolId, toolGroups } from "../records/entry/tools.ts";
import type { LengthUnit } from "../records/entry/units.ts";
import { isPlainObject } from "../records/text/plainObject.ts";
import { isTextSize, isTheme, type TextSize, type Theme } from "./appearance.ts";

export interface Preferences {
  /** US or metric: the unit of lengths, with those of weights, rates and speeds that go with it. */
  readonly length: LengthUnit;
  readonly theme: Theme;
  readonly text: TextSize;
  /** Which keys numbers are typed with where there is no hardware keyboard. */
  readonly keys: "own" | "phone";
  /** The screen stays on while measuring. */
  readonly awake: boolean;
  /** A number just entered is said aloud. */
  readonly speak: boolean;
  /** Every step is explained in full, also to who has made three checks. */
  readonly explain: boolean;
  /** What was last measured with: offered again for the next reading of the same group. */
  readonly tools: { readonly [Group in ToolGroup]?: ToolId };
  /** Who filled in the last check: offered again for the next one. */
  readonly author?: Author;
  /** When that was said. */
  readonly authorAt?: string;
  /** Several people measure with this phone: a name holds for a day. */
  readonly shared: boolean;
}

export const preferencesKey = "stopfit.preferences";

function defaultPreferences(): Preferences {
  const american = /-(US|LR|MM)$/i.test(globalThis.navigator?.language ?? "");
  return {
    length: american ? "in" : "mm",
    theme: "phone",
    text: "usual",
    keys: "own",
    awake: true,
    speak: false,
    explain: false,
    tools: {},
    shared: false,
  };
}

function readAuthor(value: unknown): Author | undefined {
  if (!isPlainObject(value)) return undefined;
  const { role, name, contact } = value;
  if (role !== "installer" && role !== "customer" && role !== "support") return undefined;
  return {
    role,
    ...(typeof name === "string" && name !== "" && { name }),
    ...(typeof contact === "string" && contact !== "" && { contact }),
  };
}

function readTools(value: unknown): Preferences["tools"] {
  if (!isPlainObject(value)) return {};
  const tools: { [Group in ToolGroup]?: ToolId } = {};
  for (const group of toolGroups) {
    const tool = value[group];
    if (isToolId(tool)) tools[group] = tool;
  }
  return tools;
}

/** What this browser keeps; the usual for whatever is not kept, or can't be read. */
export function readPreferences(): Preferences {
  const usual = defaultPreferences();
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(preferencesKey) ?? "null");
    if (!isPlainObject(kept)) return usual;
    const author = readAuthor(kept.author);
    return {
      length: kept.length === "mm" || kept.length === "in" ? kept.length : usual.length,
      theme: isTheme(kept.theme) ? kept.theme : usual.theme,
      text: isTextSize(kept.text) ? kept.text : usual.text,
      keys: kept.keys === "phone" ? "phone" : usual.keys,
      awake: typeof kept.awake === "boolean" ? kept.awake : usual.awake,
      speak: typeof kept.speak === "boolean" ? kept.speak : usual.speak,
      explain: typeof kept.explain === "boolean" ? kept.explain : usual.explain,
      tools: readTools(kept.tools),
      shared: typeof kept.shared === "boolean" ? kept.shared : usual.shared,
      ...(author && { author }),
      ...(typeof kept.authorAt === "string" && { authorAt: kept.authorAt }),
    };
  } catch {
    return usual;
  }
}

const dayMs = 86_400_000;

/** Who measures now: as last said, on a shared phone without name and contact once a day has passed. */
export function authorNow(
  { author, authorAt, shared }: Preferences,
  now: Date = new Date(),
): Author | undefined {
  if (author === undefined || !shared) return author;
  const age = now.getTime() - Date.parse(authorAt ?? "");
  return age >= 0 && age < dayMs ? author : { role: author.role };
}
