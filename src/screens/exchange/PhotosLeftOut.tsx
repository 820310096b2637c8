import * as messages from "../../words/compiled/screens/exchange.ts";
import { Notice } from "../parts/Notice.tsx";

/** Said before a way is used that does not take the photos along. */
export function PhotosLeftOut({ count, way }: { count: number; way: "link" | "code" }) {
  if (count === 0) return null;
  const stay =
    count === 1 ? messages.photoDoesNotFit({ way }) : messages.photosDoNotFit({ count, way });
  return (
    <Notice tone="care">
      <p>{messages.everythingElseGoesAlong({ stay, count })}</p>
    </Notice>
  );
}
