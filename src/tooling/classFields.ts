import { type ESTree, type Plugin, parseAst } from "vite";

/*
 * Safari 15 looks up names in the value of a class field in the wrong scope (webkit.org/b/236843), unless the
 * value stands in a function of its own. Compilers that are told of Safari 15 therefore turn every private
 * field into a WeakMap, which made the calculation six times slower. Here only those values are wrapped.
 */

type Node = { readonly type: string; readonly start: number; readonly end: number };

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && "type" in value && "start" in value;
}

function* within(node: Node): Generator<Node> {
  for (const value of Object.values(node)) {
    for (const each of Array.isArray(value) ? value : [value]) {
      if (!isNode(each)) continue;
      yield each;
      yield* within(each);
    }
  }
}

const ownScope = new Set(["ArrowFunctionExpression", "FunctionExpression", "ClassExpression"]);

/** Whether a name is looked up by the value itself, and not only by a function in it. */
function looksUpAName(value: Node): boolean {
  if (ownScope.has(value.type)) return false;
  if (value.type === "Identifier") return true;
  return Object.values(value).some((part) =>
    (Array.isArray(part) ? part : [part]).some((each) => isNode(each) && looksUpAName(each)),
  );
}

/** A script in which every such value stands in a function of its own. */
export function withFieldsWrapped(code: string): string {
  const inserts: { readonly at: number; readonly text: string }[] = [];
  for (const node of within(parseAst(code) as Node)) {
    if (node.type !== "PropertyDefinition") continue;
    const { value } = node as ESTree.PropertyDefinition;
    if (value === null || !looksUpAName(value)) continue;
    inserts.push({ at: value.start, text: "(()=>(" }, { at: value.end, text: "))()" });
  }
  inserts.sort((a, b) => a.at - b.at);
  let done = 0;
  let wrapped = "";
  for (const { at, text } of inserts) {
    wrapped += code.slice(done, at) + text;
    done = at;
  }
  return wrapped + code.slice(done);
}

/** Wraps them in what is built, after everything else. */
export function classFieldsWrapped(): Plugin {
  return {
    name: "class-fields-wrapped",
    enforce: "post",
    generateBundle: (_, bundle) => {
      for (const output of Object.values(bundle)) {
        if (output.type === "chunk") output.code = withFieldsWrapped(output.code);
      }
    },
  };
}
