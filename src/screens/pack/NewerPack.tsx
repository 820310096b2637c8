import { useEffect, useMemo, useState } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { packNews } from "../../records/pack/packNews.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
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
  const news = useMemo(
    () => (inUse && newer ? packNews(inUse.pack, newer).map(said) : []),
    [inUse, newer],
  );
  if (!inUse || !newer) return null;
  const { pack, shipped } = inUse;
  const changedHere = shipped === undefined || shipped.edited;
  return (
    <Notice tone="info" live>
      <p>
        <strong>
          {messages.newerPartsLibraryIs({
            name: newer.name,
            hasEdition: Boolean(newer.edition),
            edition: newer.edition,
          })}
        </strong>{" "}
        {messages.inUseIsEdition({
          name: pack.name === newer.name ? "" : `${pack.name}, `,
          edition: pack.edition ?? messages.notNamed,
        })}
      </p>
      <Disclosure summary={messages.whatChanges({ news: news.length })}>
        <ul>
          {news.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Disclosure>
      {changedHere && <p>{messages.youChangedOrOpened}</p>}
      {failed && <p>{messages.itCantBeTaken}</p>}
      <div class="row">
        <Button
          look="main"
          onClick={async () => {
            const kept = await useShippedPack();
            setFailed(kept === null);
            if (kept !== null) setNewer(null);
          }}
        >
          {messages.useNewerOne}
        </Button>
        {changedHere && onMerge && (
          <Button onClick={() => onMerge(newer)}>{messages.mergeTwo}</Button>
        )}
        <Button
          onClick={async () => {
            setNewer(null);
            await refuseShippedPack();
          }}
        >
          {messages.keepThisOne}
        </Button>
      </div>
    </Notice>
  );
}
