import { type ESTree, parseAst } from "vite";

export interface ShownText {
  readonly line: number;
  /** Values that are not known before it runs stand as X. */
  readonly text: string;
}

type Node = ESTree.Node;

/** Every text that a source file may show: strings, templates, sentences in parts, texts between tags. */
export function shownTexts(code: string, lang: "ts" | "tsx" = "tsx"): readonly ShownText[] {
  const found: ShownText[] = [];
  const walk = (node: Node): void => {
    if (isNoText(node)) return;
    const text = textOf(node);
    if (text === null) {
      for (const child of childrenOf(node)) walk(child);
      return;
    }
    const plain = text.replace(/\s+/g, " ").trim();
    const line = code.slice(0, node.start).split("\n").length;
    if (/[A-Za-z]{2}/.test(plain)) found.push({ line, text: plain });
    for (const child of apartFrom(node)) walk(child);
  };
  walk(parseAst(code, { lang }));
  return found;
}

/** Addresses of modules, types, and the names of looks. */
function isNoText(node: Node): boolean {
  return (
    (node.type === "JSXAttribute" && node.name.name === "class") ||
    node.type === "ImportDeclaration" ||
    node.type === "ExportAllDeclaration" ||
    /^TS(?!As|Satisfies|NonNull)/.test(node.type)
  );
}

function childrenOf(node: Node): Node[] {
  return Object.values(node).flatMap((value) => [value].flat().filter(isNode));
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && "type" in value;
}

/** What the text of a node holds besides that is read for itself: of a tag its own attributes. */
function apartFrom(node: Node): Node[] {
  if (node.type === "JSXElement" || node.type === "JSXFragment") {
    const own = node.type === "JSXElement" ? node.openingElement.attributes : [];
    return [...own, ...node.children.filter(isNode).flatMap(apartFrom)];
  }
  return [];
}

/** The whole text of a node, or null where it is none. */
function textOf(node: Node): string | null {
  switch (node.type) {
    case "Literal":
      return typeof node.value === "string" ? node.value : null;
    case "TemplateLiteral":
      return node.quasis
        .map(({ value }, index) => {
          const next = node.expressions[index];
          return `${value.cooked ?? ""}${next === undefined ? "" : partText(next)}`;
        })
        .join("");
    case "ArrayExpression":
      return node.elements.some((part) => part !== null && isPart(part))
        ? node.elements.map((part) => (part === null ? "" : partText(part))).join("")
        : null;
    case "JSXElement":
    case "JSXFragment":
      return node.children.some((child) => child.type === "JSXText" && /\w/.test(child.value))
        ? node.children.map(partText).join("")
        : null;
    default:
      return null;
  }
}

/** A list of whole texts is none of a sentence's parts. */
function isPart(node: Node): boolean {
  const text = textOf(node);
  return text !== null && /^ | $/.test(text);
}

function partText(node: Node): string {
  switch (node.type) {
    case "JSXText":
      return node.value;
    case "JSXExpressionContainer":
      return partText(node.expression);
    case "ConditionalExpression": {
      const [first, second] = [partText(node.consequent), partText(node.alternate)];
      return first.length >= second.length ? first : second;
    }
    case "JSXElement":
    case "JSXFragment":
      return node.children.map(partText).join("");
    case "JSXEmptyExpression":
      return "";
    default:
      return textOf(node) ?? "X";
  }
}
