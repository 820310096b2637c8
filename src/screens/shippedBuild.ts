/** Its address; empty where there is none. */
export const shippedFile = import.meta.env.VITE_PACK_FILE ?? "";

/** The pack that this build ships, by its content; null: the demonstration's, which is in the scripts. */
export const shippedDigest: string | null =
  shippedFile === "" ? null : (import.meta.env.VITE_PACK_DIGEST ?? null);

/** The maker's logo; null where there is none. */
export const makerLogo: string | null = import.meta.env.VITE_PACK_LOGO || null;
