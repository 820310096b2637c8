import { useEffect, useMemo, useState } from "preact/hooks";
import { capital } from "../../physics/sentence.ts";
import { dateText } from "../../records/check/checkName.ts";
import type { CheckRecord, Photo } from "../../records/check/checkRecord.ts";
import { recordDifferences } from "../../records/check/recordDifferences.ts";
import { useWords } from "../../records/check/useWords.ts";
import { limitKindOf } from "../../records/entry/entryPath.ts";
import { entryName } from "../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { stopInFull } from "../../records/pack/stopFacts.ts";
import { type PhotoProof as Proof, proofOf } from "../../records/photo/photoProof.ts";
import { adviceGiven, adviceWords } from "../../records/review/adviceWords.ts";
import type { Decision } from "../../records/review/decision.ts";
import type { Listed } from "../../records/review/listedSubmission.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { filled } from "../filled.ts";
import { jobWords } from "../job/jobWords.ts";
import { Disclosure } from "../parts/Disclosure.tsx";
import { DeskTable } from "./DeskTable.tsx";
import { deskCheckHref } from "./deskRoutes.ts";
import { decisionWords, fittedWords, momentText, wayWords, whoWords } from "./words.ts";

/** The versions of a check that came in, newest first. */
export function Versions({ versions, shown }: { versions: readonly Listed[]; shown: string }) {
  if (versions.length < 2) return null;
  return (
    <nav class="desk-versions" aria-label={messages.versionsOfThisCheck}>
      {versions.map(({ key, receivedAt }, index) => (
        <a key={key} href={deskCheckHref(key)} aria-current={key === shown ? "page" : undefined}>
          {filled(messages.version2, {
            versions: versions.length - index,
            receivedAt: <span class="small"> {momentText(receivedAt)}</span>,
          })}
        </a>
      ))}
    </nav>
  );
}

export function VersionDifferences({
  before,
  after,
  unit,
}: {
  before: CheckRecord;
  after: CheckRecord;
  unit: LengthUnit;
}) {
  const differences = useMemo(() => recordDifferences(before, after), [before, after]);
  return (
    <section class="card" aria-labelledby="differences-heading">
      <h2 id="differences-heading">{messages.changedSinceVersionBefore}</h2>
      {differences.length === 0 ? (
        <p>{messages.nothingThatIsRead}</p>
      ) : (
        <DeskTable
          caption={messages.whatDiffers}
          columns={[messages.what, messages.before, messages.now]}
          rows={differences.map(({ what, before: was, after: is }, index) => ({
            key: `${index}`,
            cells: [
              said(capital(what)),
              was === null ? messages.notThere : sentenceText(was, unit),
              is === null ? messages.notThere : sentenceText(is, unit),
            ],
          }))}
        />
      )}
    </section>
  );
}

export function Photos({ record, leftOut }: { record: CheckRecord; leftOut: number }) {
  const photos = record.photos ?? [];
  if (photos.length === 0 && leftOut === 0) return null;
  return (
    <section class="card" aria-labelledby="photos-heading">
      <h2 id="photos-heading">{messages.photos}</h2>
      {leftOut > 0 && <p>{messages.onePhotoWas({ leftOut })}</p>}
      <ul class="desk-photos">
        {photos.map((photo, index) => {
          const { type, data, caption, reading } = photo;
          const name =
            reading === undefined
              ? ""
              : reading === "fitted"
                ? messages.fittedPart
                : said(entryName(reading, limitKindOf(record, reading)));
          const words = caption?.trim() || name || messages.photo({ index: index + 1 });
          return (
            <li key={index}>
              <figure>
                <img
                  src={`data:${type};base64,${data}`}
                  alt={messages.photo2({ words })}
                  loading="lazy"
                />
                <figcaption>
                  {capital(words)}
                  {name && name.toLowerCase() !== words.toLowerCase() && (
                    <span class="small soft">: {name}</span>
                  )}
                  <PhotoProof photo={photo} />
                </figcaption>
              </figure>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** When and by whom it was taken in, and whether it is still the same picture. */
function PhotoProof({ photo }: { photo: Photo }) {
  const [proof, setProof] = useState<Proof | null>(null);
  useEffect(() => {
    let left = false;
    proofOf(photo).then((found) => !left && setProof(found));
    return () => {
      left = true;
    };
  }, [photo]);
  const { takenAt, by } = photo;
  if (takenAt === undefined && by === undefined && proof !== "other") return null;
  return (
    <span class="small soft desk-proof">
      {takenAt && momentText(takenAt)}
      {by && (
        <>
          {takenAt && ", "}
          <bdi>{by}</bdi>
        </>
      )}
      {proof === "same" && messages.unchangedSince}
      {proof === "other" && <strong class="tone-no">{messages.notPictureThatWas}</strong>}
    </span>
  );
}

export function Facts({
  record,
  mailFrom,
  unit,
}: {
  record: CheckRecord;
  mailFrom: string | undefined;
  unit: LengthUnit;
}) {
  const { author, vehicle } = record;
  return (
    <section class="card" aria-labelledby="facts-heading">
      <h2 id="facts-heading">{messages.whatWasSent}</h2>
      <dl class="facts">
        <dt>{messages.from}</dt>
        <dd>
          <bdi>{whoWords({ who: author.name?.trim() ?? "", role: author.role })}</bdi>
        </dd>
        {author.contact && (
          <>
            <dt>{messages.contact}</dt>
            <dd>
              <bdi>{author.contact}</bdi>
            </dd>
          </>
        )}
        {mailFrom && (
          <>
            <dt>{messages.mailFrom}</dt>
            <dd>
              <bdi>{mailFrom}</bdi>
              {messages.byWhatMailSays}
            </dd>
          </>
        )}
        {record.job && (
          <>
            <dt>{messages.job}</dt>
            <dd>
              <bdi>{jobWords(record.job)}</bdi>
            </dd>
          </>
        )}
        <dt>{messages.started}</dt>
        <dd>{dateText(record.createdAt)}</dd>
        <StopAndUse record={record} unit={unit} />
        <dt>{messages.vehicleInPartsLibrary}</dt>
        <dd>{vehicle.platformId ?? messages.noneNamed}</dd>
        <dt>{messages.numberWord}</dt>
        <dd>{record.id}</dd>
      </dl>
      {record.notes?.trim() && (
        <Disclosure summary={messages.notes} open>
          <p class="received-notes" dir="auto">
            {record.notes}
          </p>
        </Disclosure>
      )}
    </section>
  );
}

interface Event {
  readonly at: string;
  readonly key: string;
  readonly words: string;
  readonly more: readonly string[];
}

function eventsOf(decisions: readonly Decision[], versions: readonly Listed[]): Event[] {
  const place = new Map(versions.map(({ key }, index) => [key, versions.length - index]));
  const undone = new Set(decisions.map(({ undoes }) => undoes));
  const came = versions.map(({ key, receivedAt, way }) => ({
    at: receivedAt,
    key,
    words: messages.versionCameIn({ place: place.get(key) ?? "", way: wayWords[way] }),
    more: [],
  }));
  const decided = decisions.map(
    ({ key, at, kind, by, note, readings, stop, submission, fromBackup }) => ({
      at,
      key,
      words: messages.takenBack({
        kind: decisionWords[kind],
        hasUndone: Boolean(undone.has(key)),
        by: by || messages.noName,
        place: place.get(submission) ?? "?",
        noFromBackup: fromBackup === undefined,
      }),
      more: [
        ...(readings?.length
          ? [messages.readings2({ readings: readings.map((id) => said(entryName(id))).join(", ") })]
          : []),
        ...(stop ? [messages.stopWord2({ stop })] : []),
        ...(note.trim() ? [note.trim()] : []),
      ],
    }),
  );
  return [...came, ...decided].sort((a, b) => (a.at < b.at ? 1 : -1));
}

/** What happened to a check at this desk, newest first. */
export function History({
  decisions,
  versions,
}: {
  decisions: readonly Decision[];
  versions: readonly Listed[];
}) {
  return (
    <section class="card" aria-labelledby="history-heading">
      <h2 id="history-heading">{messages.historyWord}</h2>
      <ol class="desk-history">
        {eventsOf(decisions, versions).map(({ at, key, words, more }) => (
          <li key={key}>
            <p>
              <strong>{words}</strong>
            </p>
            <p class="small soft">{momentText(at)}</p>
            {more.map((text) => (
              <p key={text} class="small">
                {text}
              </p>
            ))}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Of a check's facts: its stop, what was fitted, what the vehicle is used for and how far it is raised. */
export function StopAndUse({
  record: { stop, advised, fitted, vehicle },
  unit,
}: {
  record: CheckRecord;
  unit: LengthUnit;
}) {
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const newest = advised?.at(-1);
  return (
    <>
      <dt>{messages.stopWord}</dt>
      <dd>
        <bdi>{said(stopInFull(stop))}</bdi>
      </dd>
      {newest && (
        <>
          <dt>{messages.advisedByApp}</dt>
          <dd>
            <bdi>{sentenceText(adviceWords(newest), unit)}</bdi>, {said(adviceGiven(newest))}
          </dd>
        </>
      )}
      {fitted && (
        <>
          <dt>{messages.fitted}</dt>
          <dd>
            <bdi>{fittedWords(fitted, unit)}</bdi>
          </dd>
        </>
      )}
      <dt>{messages.use}</dt>
      <dd>{said(useWords[vehicle.use])}</dd>
      <dt>{messages.lift}</dt>
      <dd>{length(vehicle.liftMm)}</dd>
    </>
  );
}
