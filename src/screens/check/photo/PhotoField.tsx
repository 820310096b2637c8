import { useRef, useState } from "preact/hooks";
import type { Sentence } from "../../../physics/sentence.ts";
import type { Photo } from "../../../records/check/checkRecord.ts";
import { recordBounds } from "../../../records/check/recordFormat.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { limitKindOf } from "../../../records/entry/entryPath.ts";
import { entryName } from "../../../records/entry/readingCatalogue.ts";
import { withProof } from "../../../records/photo/photoProof.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/check/photo.ts";
import { oneMoment } from "../../../words/compiled/screens/parts.ts";
import type { Change } from "../../guide/stepProps.ts";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { measurerNow } from "../../preferences.ts";
import { hasRoomForPhoto, photosOf, withoutPhoto, withPhoto } from "./photos.ts";
import "./photo.css";

/** Photos of one reading: how the tape was held, for who looks at it later. */
export function PhotoField({
  id,
  of,
  stored,
  change,
}: {
  id: string;
  /** What it shows, where that is no reading. */
  of?: string;
  stored: StoredCheck;
  change: Change;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const [working, setWorking] = useState(false);
  const [fault, setFault] = useState<Sentence | null>(null);
  const [takenOut, setTakenOut] = useState<Photo | null>(null);
  const photos = photosOf(stored, id);
  const name = of ?? said(entryName(id, limitKindOf(stored.record, id)));

  const open = (withCamera: boolean) => {
    const input = picker.current;
    if (withCamera) input?.setAttribute("capture", "environment");
    else input?.removeAttribute("capture");
    input?.click();
  };
  const take = async (file: File | undefined) => {
    if (picker.current) picker.current.value = "";
    if (!file) return;
    setWorking(true);
    const { reducedPhoto } = await import("./reducedPhoto.ts");
    const reduced = await reducedPhoto(file, id);
    const photo = reduced.ok
      ? { ok: true as const, value: await withProof(reduced.value, measurerNow()) }
      : reduced;
    setWorking(false);
    setFault(photo.ok ? null : photo.fault.sentence);
    setTakenOut(null);
    if (photo.ok) change((current) => withPhoto(current, photo.value));
  };

  return (
    <div class="stack-close">
      <input
        ref={picker}
        type="file"
        accept="image/*"
        class="unseen"
        tabIndex={-1}
        aria-label={messages.photoOf({ name })}
        onChange={(event) => take(event.currentTarget.files?.[0])}
      />
      {photos.length > 0 && (
        <ul class="photos">
          {photos.map(({ photo, index }, place) => {
            const alone = photos.length === 1;
            const which = { place: place + 1, name };
            return (
              <li key={`${index} ${photo.data.length}`}>
                <img
                  src={`data:${photo.type};base64,${photo.data}`}
                  alt={alone ? messages.photoOf({ name }) : messages.photoOf2(which)}
                />
                <Button
                  icon="bin"
                  label={alone ? messages.remove({ name }) : messages.remove2(which)}
                  onClick={() => {
                    setTakenOut(photo);
                    change((current) => withoutPhoto(current, photo));
                  }}
                />
              </li>
            );
          })}
        </ul>
      )}
      {takenOut && (
        <Notice tone="info" live>
          <p>{messages.photoRemoved}</p>
          <div class="row">
            <Button
              icon="undo"
              onClick={() => {
                change((current) => withPhoto(current, takenOut));
                setTakenOut(null);
              }}
            >
              {messages.undo}
            </Button>
          </div>
        </Notice>
      )}
      {fault && (
        <Notice tone="no" live>
          <p>{sentenceText(fault, "mm")}</p>
        </Notice>
      )}
      {hasRoomForPhoto(stored) ? (
        <div class="row photo-ways">
          <Button icon="camera" disabled={working} onClick={() => open(true)}>
            {working ? oneMoment : messages.takePhoto}
          </Button>
          <Button disabled={working} onClick={() => open(false)}>
            {messages.choosePhoto}
          </Button>
        </div>
      ) : (
        <p class="small soft">
          {messages.thisCheckHasPhotos({
            photos: recordBounds.photos,
            hasPhotos: photos.length > 0,
          })}
        </p>
      )}
    </div>
  );
}
