import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessment } from "../../../physics/fitment.ts";
import { inModelUnits } from "../../../physics/sentence.ts";
import type { CheckRecord } from "../../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { codeSeries } from "../../../sharing/codeSeries.ts";
import { drawCode, quietZone } from "../../../sharing/qrDrawing.ts";
import { saveFile } from "../../../sharing/saveFile.ts";
import { canShareFile, share } from "../../../sharing/shareFile.ts";
import { appAddress, shareLink } from "../../../sharing/shareLink.ts";
import type { Prescribing } from "../../assessment/usePrescription.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { Button } from "../../parts/Button.tsx";
import { type CardContent, cardContent } from "./cardContent.ts";
import { type CardPictures, cardPicture, standaloneDrawing } from "./cardPicture.ts";
import "./card.css";

export interface CardDialogProps {
  readonly record: CheckRecord;
  readonly assessment: Assessment;
  readonly prescribing: Prescribing;
  readonly unit: LengthUnit;
  onLeave(): void;
}

/** The result as one page: as a picture to send or save, or on paper. Made on this device. */
export function CardDialog({ record, assessment, prescribing, unit, onLeave }: CardDialogProps) {
  const content = useMemo(
    () => cardContent(record, assessment, prescribing, unit),
    [record, assessment, prescribing, unit],
  );
  const pictures = useMemo(() => picturesOf(record), [record]);
  const link = useMemo(() => linkOf(record), [record]);
  const [file, setFile] = useState<File | null>(null);
  const [said, setSaid] = useState("Making the picture …");

  useEffect(() => {
    document.documentElement.dataset.printing = "card";
    return () => {
      delete document.documentElement.dataset.printing;
    };
  }, []);

  useEffect(() => {
    let left = false;
    cardPicture(content, pictures).then((made) => {
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
  }, [content, pictures, record]);

  const shareIt = async () => {
    if (!file) return;
    const outcome = await share({ files: [file], title: content.title });
    if (!outcome.ok) setSaid("The share sheet did not open. Save the picture instead.");
  };

  return (
    <section class="card-sheet" aria-label="Card to show and send">
      <div class="row card-actions">
        {file && canShareFile(file) && (
          <Button look="main" onClick={shareIt}>
            Share the picture
          </Button>
        )}
        <Button
          look={file && canShareFile(file) ? "plain" : "main"}
          icon="file"
          disabled={!file}
          onClick={() => {
            if (!file) return;
            saveFile(file);
            setSaid("The picture was handed to the browser to save.");
          }}
        >
          Save the picture
        </Button>
        <Button onClick={() => window.print()}>Print</Button>
        <Button look="quiet" icon="cross" onClick={onLeave}>
          Close the card
        </Button>
      </div>
      {said && <p role="status">{said}</p>}
      <CardPage content={content} pictures={pictures} link={link} />
    </section>
  );
}

function CardPage({
  content,
  pictures,
  link,
}: {
  content: CardContent;
  pictures: CardPictures;
  link: string | null;
}) {
  const { code, travel, photos } = pictures;
  const still = useMemo(() => travel && standaloneDrawing(travel), [travel]);
  return (
    <article class="card-page">
      <h2>{content.title}</h2>
      <p class="small soft">{content.facts.join(" · ")}</p>
      <p class={`card-verdict tone-${content.verdict}`}>
        <StateMark state={content.verdict} size={36} label="" />
        {content.verdictWords}
      </p>
      <p>{content.reason}</p>
      {content.toDo !== "" && (
        <p>
          <strong>What to do: {content.toDo}</strong>
        </p>
      )}
      <div class="card-pictures">
        {still && <img src={still} alt="The corner drawn to scale" />}
        {code && (
          <svg
            viewBox={`${-code.quiet} ${-code.quiet} ${code.side + 2 * code.quiet} ${code.side + 2 * code.quiet}`}
            role="img"
            aria-label="QR code of this check"
          >
            <rect
              x={-code.quiet}
              y={-code.quiet}
              width={code.side + 2 * code.quiet}
              height={code.side + 2 * code.quiet}
              fill="#ffffff"
            />
            <path d={code.path} fill="#000000" />
          </svg>
        )}
      </div>
      <h3>Readings</h3>
      <ul class="card-readings">
        {content.readings.map(({ name, value }) => (
          <li key={name}>
            {name}: <strong>{value}</strong>
          </li>
        ))}
      </ul>
      {photos.length > 0 && (
        <div class="card-photos">
          {photos.slice(0, 3).map((photo, index) => (
            <img key={photo} src={photo} alt={`Taken on the vehicle, ${index + 1}`} />
          ))}
        </div>
      )}
      <h3>Cautions</h3>
      <ul class="plain-list small">
        {content.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      {link && (
        <p class="small">
          <a href={link}>Open this check in Stopfit</a>
        </p>
      )}
      <p class="small">{content.certification}</p>
    </article>
  );
}

function picturesOf(record: CheckRecord): CardPictures {
  const series = codeSeries(record, appAddress(location));
  const only = series.ok && series.value.codes.length === 1 ? series.value.codes[0] : undefined;
  const drawn = only && drawCode(only.address, only.digits);
  return {
    travel: document.querySelector<SVGSVGElement>(".travel-whole"),
    photos: (record.photos ?? []).map(({ type, data }) => `data:${type};base64,${data}`),
    code: drawn?.ok ? { side: drawn.value.size, quiet: quietZone, path: drawn.value.path } : null,
  };
}

function linkOf(record: CheckRecord): string | null {
  const link = shareLink(record, appAddress(location));
  return link.ok ? link.value.address : null;
}

function fileName({ vehicle, createdAt }: CheckRecord): string {
  const label = vehicle.label.replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 60);
  return `stopfit-${label}-${createdAt.slice(0, 10)}.png`;
}
