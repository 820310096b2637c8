import type { Unpacked } from "./unpack.ts";

/** A worker takes one file apart and gives what it holds, one a request. */
export type UnpackRequest =
  | { readonly kind: "file"; readonly file: File }
  | { readonly kind: "next" };

/** Null: that was all of it. */
export type UnpackReply = Unpacked | "unreadable" | null;
