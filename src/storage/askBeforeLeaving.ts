const holders = new Set<object>();

function ask(event: BeforeUnloadEvent): void {
  event.preventDefault();
}

/** While any holder has something that is not kept, the browser asks before the page is closed. */
export function askBeforeLeaving(holder: object, holds: boolean): void {
  if (holds) holders.add(holder);
  else holders.delete(holder);
  const page = typeof window === "undefined" ? null : window;
  if (holders.size > 0) page?.addEventListener("beforeunload", ask);
  else page?.removeEventListener("beforeunload", ask);
}
