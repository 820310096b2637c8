import { useEffect, useMemo, useState } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { packNews } from "../../records/pack/packNews.ts";
import { Button } from "../parts/Button.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { Notice } from "../parts/Notice.tsx";
import {
  newerShippedPack,
  refuseShippedPack,
  usePackInUse,
  useShippedPack,
} from "../referencePack.ts";

export interface NewerPackProps {
  readonly unit?: LengthUnit;
  /** Where the two can be merged. */
  readonly onMerge?: (theirs: Pack) => void;
}

/** The maker's newer pack: what it changes, taken by a tap. Nothing where there is none. */
export function NewerPack({ onMerge }: NewerPackProps) {
  const inUse = usePackInUse();
  const [newer, setNewer] = useState<Pack | null>(null);
  const [failed, setFailed] = useState(false);
  const revision = inUse?.revision;
  useEffect(() => {
    let left = false;
    newerShippedPack().then((found) => !left && setNewer(found));
    return () => {
      left = true;
    };
  }, [revision]);
  const news = useMemo(() => (inUse && newer ? packNews(inUse.pack, newer) : []), [inUse, newer]);
  if (!inUse || !newer) return null;
  const { pack, shipped } = inUse;
  const changedHere = shipped === undefined || shipped.edited;
  return (
    <Notice tone="info" live>
      <p>
        <strong>
          A newer parts library is ready: {newer.name}
          {newer.edition && `, edition ${newer.edition}`}.
        </strong>{" "}
        In use is {pack.name === newer.name ? "" : `${pack.name}, `}edition{" "}
        {pack.edition ?? "not named"}. Checks that you made keep what they used.
      </p>
      <Disclosure summary={`What changes (${news.length})`}>
        <ul>
          {news.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Disclosure>
      {changedHere && (
        <p>You changed or opened the one in use yourself. Using the newer one drops that.</p>
      )}
      {failed && <p>It can't be taken now. Find a signal, then try again.</p>}
      <div class="row">
        <Button
          look="main"
          onClick={async () => {
            const kept = await useShippedPack();
            setFailed(kept === null);
            if (kept !== null) setNewer(null);
          }}
        >
          Use the newer one
        </Button>
        {changedHere && onMerge && <Button onClick={() => onMerge(newer)}>Merge the two</Button>}
        <Button
          onClick={async () => {
            setNewer(null);
            await refuseShippedPack();
          }}
        >
          Keep this one
        </Button>
      </div>
    </Notice>
  );
}
