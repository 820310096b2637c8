/** Lets the page do its own work between two pieces that each take a long text in or hand it on. */
export function pageTurn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
