import { later } from "../parts/later.tsx";

/** What there is to say about being offline and about a newer version; nothing until it is fetched. */
export const OfflineNotice = later(
  async () => (await import("./OfflineNotice.tsx")).OfflineNotice,
  {
    quiet: true,
  },
);
