/** As much of the browser's caches as is used, seen into. */
export function fakeCaches() {
  const responses = new Map<string, Response>();
  const cache = {
    put: async (key: URL, response: Response) => {
      responses.set(String(key), response);
    },
    match: async (key: Request) => responses.get(key.url)?.clone(),
    keys: async () => [...responses.keys()].map((url) => new Request(url)),
    delete: async (key: Request) => responses.delete(key.url),
  };
  return {
    caches: { open: async () => cache } as unknown as CacheStorage,
    types: () => [...responses.values()].map(({ headers }) => headers.get("content-type")),
    keep: (address: string, response: Response) => cache.put(new URL(address), response),
  };
}
