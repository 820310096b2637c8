type Listener = () => void;

const listeners = new Set<Listener>();

/** An open check of this page was saved: what lists it beside is no longer up to date. */
export function tellKept(): void {
  for (const listener of listeners) listener();
}

export function onKept(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
