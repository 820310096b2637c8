import { capital } from "../../../physics/sentence.ts";
import type { CheckRecord } from "../../../records/check/checkRecord.ts";
import { limitKindOf } from "../../../records/entry/entryPath.ts";
import { entryName } from "../../../records/entry/readingCatalogue.ts";
import { said } from "../../../saying/texts.ts";
import { codeSeries } from "../../../sharing/codeSeries.ts";
import { drawCode, quietZone } from "../../../sharing/qrDrawing.ts";
import { appAddress, shareLink } from "../../../sharing/shareLink.ts";
import * as messages from "../../../words/compiled/screens/answer/card.ts";

/** A code's modules a side, its quiet zone, and their path. */
export interface CardCode {
  readonly side: number;
  readonly quiet: number;
  readonly path: string;
}

export interface CardPhoto {
  /** The picture itself, as a data address. */
  readonly address: string;
  readonly words: string;
}

/** As many as stay readable on one page. */
export const mostCardPhotos = 6;

/** Every photo of a check, with what it shows in words. */
export function photosOf(record: CheckRecord): readonly CardPhoto[] {
  return (record.photos ?? []).map(({ type, data, caption, reading }, index) => {
    const shown =
      reading === undefined
        ? ""
        : reading === "fitted"
          ? messages.fittedPart
          : said(entryName(reading, limitKindOf(record, reading)));
    return {
      address: `data:${type};base64,${data}`,
      words: capital(caption?.trim() || shown || messages.photo({ index: index + 1 })),
    };
  });
}

/** Null where the check needs more than one code. */
export function cardCode(record: CheckRecord): CardCode | null {
  const series = codeSeries(record, appAddress(location));
  const only = series.ok && series.value.codes.length === 1 ? series.value.codes[0] : undefined;
  const drawn = only && drawCode(only.address, only.digits);
  return drawn?.ok ? { side: drawn.value.size, quiet: quietZone, path: drawn.value.path } : null;
}

export function cardLink(record: CheckRecord): string | null {
  const link = shareLink(record, appAddress(location));
  return link.ok ? link.value.address : null;
}
