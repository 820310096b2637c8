import { options, type VNode } from "preact";

/* A message that nobody has put into words shows nothing at all: no part of a page may be given one. */

const isUnsaid = (value: unknown): boolean =>
  Array.isArray(value)
    ? value.some(isUnsaid)
    : typeof value === "object" && value !== null
      ? ("code" in value && typeof value.code === "string") ||
        ("kind" in value && "value" in value && Object.keys(value).length === 2)
      : typeof value === "string" && value.includes("[object Object]");

/** What of an element would show nothing, or "[object Object]"; undefined where all of it is said. */
export function unsaidIn({ type, props }: VNode): string | undefined {
  const given = props as Readonly<Record<string, unknown>>;
  // Of what a component is given only the children are shown as they are.
  const names = typeof type === "string" ? Object.keys(given) : ["children"];
  return names.find((name) => isUnsaid(given[name]));
}

const made = options.vnode;
options.vnode = (vnode) => {
  const name = unsaidIn(vnode);
  if (name !== undefined) {
    const { type } = vnode;
    throw new Error(
      `${typeof type === "string" ? type : type.name} was given words that are not said: ${name}`,
    );
  }
  made?.(vnode);
};
