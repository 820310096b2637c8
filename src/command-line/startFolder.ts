/** File names hold from where the command was typed, which npm remembers as it moves to the project. */
export function startFolder(command: string): string {
  const typedIn = process.env.npm_lifecycle_event === command ? process.env.INIT_CWD : undefined;
  return typedIn ?? process.cwd();
}
