import { useState } from "preact/hooks";
import type { ReadingId } from "../../../physics/readings/index.ts";
import { capital } from "../../../physics/sentence.ts";
import { catalogueEntry } from "../../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import {
  type AgainstPack,
  fewestToTakeOver,
  packWith,
} from "../../../records/findings/measuredAgainstPack.ts";
import type { Pack } from "../../../records/pack/pack.ts";
import { quantityKindOf } from "../../../records/review/oddReadings.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/desk/findings.ts";
import { Button } from "../../parts/Button.tsx";
import { keepReferencePack } from "../../referencePack.ts";
import { DeskTable } from "../DeskTable.tsx";
import type { Shared } from "../shared/useShared.ts";

type Offered = Awaited<ReturnType<Shared["offerPack"]>>;

const offerWords: { readonly [Result in Offered]: string } = {
  offered: messages.otherDesksAreOffered,
  tooLarge: messages.itIsTooLarge,
  notKept: messages.itCantBeOffered,
};

function idOf(reading: AgainstPack["reading"]): ReadingId {
  return reading === "gap" || reading === "rideHeight" ? `left.${reading}` : reading;
}

/** Measured minus library by reading, and taking the median over as a new version of the pack. */
export function AgainstPackTable({
  rows,
  pack,
  unit,
  shared,
}: {
  rows: readonly AgainstPack[];
  pack: Pack;
  unit: LengthUnit;
  shared: Shared | null;
}) {
  const [told, setTold] = useState("");
  const takeOver = async (row: AgainstPack) => {
    const next = packWith(pack, row, new Date().toISOString().slice(0, 10), said);
    const kept = await keepReferencePack(next);
    const name = said(catalogueEntry(idOf(row.reading)).name);
    if (kept.kind !== "kept") {
      setTold(messages.notTakenOverLibrary);
      return;
    }
    const offered = shared?.state ? ` ${offerWords[await shared.offerPack()]}` : "";
    setTold(messages.takenOverOfIt({ name, label: row.platform.label, offered }));
  };
  const offer = async () => {
    if (shared) setTold(offerWords[await shared.offerPack()]);
  };
  return (
    <section class="card" aria-labelledby="against-heading">
      <h2 id="against-heading">{messages.measuredMinusLibrary}</h2>
      <p class="small soft">{messages.onlyWhatWasMeasured({ fewestToTakeOver })}</p>
      {told && <p role="status">{told}</p>}
      {rows.length === 0 ? (
        <p>{messages.noCheckNamesVehicle}</p>
      ) : (
        <DeskTable
          caption={messages.measuredMinusLibraryBy}
          columns={[
            messages.vehicle,
            messages.reading,
            messages.library,
            messages.measured,
            messages.medianDifference,
            messages.halfOfThemBetween,
            { name: "", heading: <span class="unseen">{messages.takeOver}</span> },
          ]}
          rows={rows.map((row) => {
            const { platform, reading, packValue, differences } = row;
            const { n, median, quarter, threeQuarters } = differences;
            const id = idOf(reading);
            const kind = quantityKindOf(id);
            const text = (value: number) => quantityText({ kind, value }, unit);
            const offered = n >= fewestToTakeOver && Math.abs(median) > 0.05;
            return {
              key: `${platform.id} ${reading}`,
              cells: [
                <>
                  <bdi>{platform.label}</bdi>, {platform.axle}
                </>,
                capital(said(catalogueEntry(id).name)),
                text(packValue),
                n,
                text(median),
                messages.and({ quarter: text(quarter), threeQuarters: text(threeQuarters) }),
                offered && (
                  <Button onClick={() => takeOver(row)}>{messages.takeOverIntoLibrary}</Button>
                ),
              ],
            };
          })}
        />
      )}
      {shared?.state && (
        <div class="row">
          <Button onClick={offer}>{messages.offerThisLibraryTo}</Button>
        </div>
      )}
    </section>
  );
}
