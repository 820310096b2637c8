import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessment } from "../../../physics/fitment.ts";
import type { CheckRecord } from "../../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { inModelUnits } from "../../../saying/modelUnits.ts";
import { saveFile } from "../../../sharing/saveFile.ts";
import { canShareFile, copyText, share } from "../../../sharing/shareFile.ts";
import * as messages from "../../../words/compiled/screens/answer/card.ts";
import type { Prescribing } from "../../assessment/usePrescription.ts";
import { Button } from "../../parts/Button.tsx";
import { CheckLine } from "../../parts/Choices.tsx";
import { canPrint, printPage } from "../../parts/printing.ts";
import { CardPage } from "./CardPage.tsx";
import { cardContent } from "./cardContent.ts";
import { cardPicture, standaloneDrawing } from "./cardPicture.ts";
import { cardCode, cardLink, mostCardPhotos, photosOf } from "./cardPictures.ts";

export interface CardDialogProps {
  readonly record: CheckRecord;
  readonly assessment: Assessment;
  readonly prescribing: Prescribing;
  readonly unit: LengthUnit;
  onLeave(): void;
}

/** Unless others are chosen. */
const usualPhotos = 3;

/** The result as one page: as a picture to send or save, or on paper. Made on this device. */
export function CardDialog({ record, assessment, prescribing, unit, onLeave }: CardDialogProps) {
  const content = useMemo(
    () => cardContent(record, assessment, prescribing, unit),
    [record, assessment, prescribing, unit],
  );
  const all = useMemo(() => photosOf(record), [record]);
  const [chosen, setChosen] = useState<readonly number[]>(() =>
    all.slice(0, usualPhotos).map((_, index) => index),
  );
  const photos = useMemo(() => all.filter((_, index) => chosen.includes(index)), [all, chosen]);
  const code = useMemo(() => cardCode(record), [record]);
  const link = useMemo(() => cardLink(record), [record]);
  const travel = useMemo(() => document.querySelector<SVGSVGElement>(".travel-whole"), []);
  const still = useMemo(() => travel && standaloneDrawing(travel), [travel]);
  const [file, setFile] = useState<File | null>(null);
  const [said, setSaid] = useState(messages.makingPicture);

  useEffect(() => {
    document.documentElement.dataset.printing = "card";
    return () => {
      delete document.documentElement.dataset.printing;
    };
  }, []);

  useEffect(() => {
    let left = false;
    cardPicture(content, { travel, photos, code }).then((made) => {
      if (left) return;
      if (!made.ok) {
        setSaid(inModelUnits(made.fault.sentence));
        return;
      }
      setFile(new File([made.value], fileName(record), { type: "image/png" }));
      setSaid("");
    });
    return () => {
      left = true;
    };
  }, [content, travel, photos, code, record]);

  const shareIt = async () => {
    if (!file) return;
    const outcome = await share({ files: [file], title: content.title });
    if (!outcome.ok) setSaid(messages.shareSheetDidNot);
  };
  const shares = file !== null && canShareFile(file);

  return (
    <section class="card-sheet" aria-label={messages.cardToShowAnd}>
      <div class="row card-actions">
        {shares && (
          <Button look="main" onClick={shareIt}>
            {messages.sharePicture}
          </Button>
        )}
        <Button
          look={shares ? "plain" : "main"}
          icon="file"
          disabled={!file}
          onClick={async () => {
            if (!file) return;
            setSaid(
              (await saveFile(file)) ? messages.pictureWasHandedOver : messages.pictureIsNotSaved,
            );
          }}
        >
          {messages.savePicture}
        </Button>
        {canPrint() && <Button onClick={printPage}>{messages.printWord}</Button>}
        {link && (
          <Button
            icon="link"
            onClick={async () => {
              const copied = await copyText(link);
              setSaid(copied.ok ? messages.linkIsCopiedIt : messages.notCopied);
            }}
          >
            {messages.copyLink}
          </Button>
        )}
        <Button look="quiet" icon="cross" onClick={onLeave}>
          {messages.closeCard}
        </Button>
      </div>
      {all.length > 0 && (
        <fieldset class="card-choice card-actions">
          <legend class="field-label">{messages.photosOnCardAt({ mostCardPhotos })}</legend>
          {all.map(({ address, words }, index) => {
            const isOn = chosen.includes(index);
            return (
              <CheckLine
                key={`${index} ${words}`}
                checked={isOn}
                onChange={(wanted) => {
                  const others = chosen.filter((each) => each !== index);
                  if (wanted && others.length >= mostCardPhotos) {
                    setSaid(messages.photosFitTakeOne({ mostCardPhotos }));
                    setChosen([...chosen]);
                  } else setChosen(wanted ? [...others, index] : others);
                }}
                picture={<img src={address} alt="" />}
              >
                {words}
              </CheckLine>
            );
          })}
        </fieldset>
      )}
      {said && <p role="status">{said}</p>}
      <CardPage
        content={content}
        travel={still && <img src={still} alt={messages.cornerDrawnToScale} />}
        photos={photos}
        code={code}
        link={link}
      />
    </section>
  );
}

function fileName({ vehicle, createdAt }: CheckRecord): string {
  const label = vehicle.label.replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 60);
  return `stopfit-${label}-${createdAt.slice(0, 10)}.png`;
}
