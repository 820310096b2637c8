/** A text to look for: as a part, letters of any case, or exactly, or by a pattern. */
export type Sought =
  | { readonly kind: "part" | "exactly"; readonly text: string }
  | { readonly kind: "pattern"; readonly source: string; readonly flags: string };

/** How to get from some elements of the page to others; plain data, so that it can be sent into it. */
export type Step =
  | { readonly by: "css" | "xpath"; readonly selector: string }
  | {
      readonly by: "role";
      readonly role: string;
      readonly name: Sought | null;
      readonly level: number | null;
    }
  | { readonly by: "text" | "label"; readonly text: Sought }
  | { readonly by: "hasText"; readonly text: Sought }
  | { readonly by: "alsoIn"; readonly path: Path }
  | { readonly by: "nth"; readonly place: number };

export type Path = readonly Step[];

export function sought(text: string | RegExp, exact = false): Sought {
  if (text instanceof RegExp) return { kind: "pattern", source: text.source, flags: text.flags };
  return { kind: exact ? "exactly" : "part", text };
}

function plainWords({ by, ...rest }: Step): string {
  return `${by} ${Object.values(rest)
    .map((value) => JSON.stringify(value))
    .join(" ")}`;
}

export function inWords(path: Path): string {
  return path.map(plainWords).join(" > ");
}
