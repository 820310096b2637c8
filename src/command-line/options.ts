import * as messages from "../words/compiled/command-line.ts";
/** What stands on a command line: switches, options with a value, files. */
export interface OptionsFound<Switch extends string, Option extends string> {
  readonly switches: ReadonlySet<Switch>;
  /** Of each option given, the text last given for it; undefined where none followed. */
  readonly options: ReadonlyMap<Option, string | undefined>;
  readonly files: readonly string[];
}

export type Parsed<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly message: string };

/**
 * An option takes the next argument or what follows "="; everything after "--" is a file. "help" where
 * that is asked for; a message where an option is unknown or no file is given.
 */
export function optionsIn<Switch extends string, Option extends string>(
  given: readonly string[],
  known: { readonly switches: readonly Switch[]; readonly options: readonly Option[] },
): Parsed<OptionsFound<Switch, Option>> | "help" {
  const switches = new Set<Switch>();
  const options = new Map<Option, string | undefined>();
  const files: string[] = [];
  for (let index = 0; index < given.length; index += 1) {
    const argument = given[index] ?? "";
    if (argument === "--") {
      files.push(...given.slice(index + 1));
      break;
    }
    if (argument === "--help" || argument === "-h") return "help";
    const switched = known.switches.find((name) => argument === name);
    const option = known.options.find(
      (name) => argument === name || argument.startsWith(`${name}=`),
    );
    if (switched !== undefined) switches.add(switched);
    else if (option !== undefined && argument === option) options.set(option, given[++index]);
    else if (option !== undefined) options.set(option, argument.slice(option.length + 1));
    else if (argument.startsWith("-") && argument !== "-") {
      return { ok: false, message: messages.optionIsNotKnown({ argument }) };
    } else files.push(argument);
  }
  if (files.length === 0) return { ok: false, message: messages.noFileIsGiven };
  return { ok: true, value: { switches, options, files } };
}
