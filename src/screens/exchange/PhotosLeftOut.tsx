import { Notice } from "../parts/Notice.tsx";

/** Said before a way is used that does not take the photos along. */
export function PhotosLeftOut({ count, way }: { count: number; way: "link" | "code" }) {
  if (count === 0) return null;
  const stay =
    count === 1
      ? `The photo does not fit in a ${way} and stays behind`
      : `The ${count} photos do not fit in a ${way} and stay behind`;
  return (
    <Notice tone="care">
      <p>
        {stay}; everything else goes along. Send the file if the other side needs{" "}
        {count === 1 ? "it" : "them"}.
      </p>
    </Notice>
  );
}
