import { useState } from "preact/hooks";
import type { ReadingId } from "../../../physics/readings/index.ts";
import { capital } from "../../../physics/sentence.ts";
import { quantityText } from "../../../records/entry/quantityText.ts";
import { catalogueEntry } from "../../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import {
  type AgainstPack,
  fewestToTakeOver,
  packWith,
} from "../../../records/findings/measuredAgainstPack.ts";
import type { Pack } from "../../../records/pack/pack.ts";
import { quantityKindOf } from "../../../records/review/oddReadings.ts";
import { Button } from "../../parts/Button.tsx";
import { keepReferencePack } from "../../referencePack.ts";
import { DeskTable } from "../DeskTable.tsx";
import type { Shared } from "../shared/useShared.ts";

type Offered = Awaited<ReturnType<Shared["offerPack"]>>;

const offerWords: { readonly [Result in Offered]: string } = {
  offered: "The other desks are offered it; each takes it by a tap.",
  tooLarge:
    "It is too large to be offered to the other desks. Save the library and hand on its file.",
  notKept: "It can't be offered to the other desks: this browser refuses to store anything here.",
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
  const [said, setSaid] = useState("");
  const takeOver = async (row: AgainstPack) => {
    const next = packWith(pack, row, new Date().toISOString().slice(0, 10));
    const kept = await keepReferencePack(next);
    const { name } = catalogueEntry(idOf(row.reading));
    if (kept.kind !== "kept") {
      setSaid("Not taken over: the library could not be saved, or was changed in another tab.");
      return;
    }
    const offered = shared?.state ? ` ${offerWords[await shared.offerPack()]}` : "";
    setSaid(
      `Taken over: ${name} of ${row.platform.label}. It is a new version of the library.${offered}`,
    );
  };
  const offer = async () => {
    if (shared) setSaid(offerWords[await shared.offerPack()]);
  };
  return (
    <section class="card" aria-labelledby="against-heading">
      <h2 id="against-heading">Measured minus library</h2>
      <p class="small soft">
        Only what was measured counts. The library takes the median; at least {fewestToTakeOver}
        {" measurements "}
        are needed.
      </p>
      {said && <p role="status">{said}</p>}
      {rows.length === 0 ? (
        <p>No check names a vehicle of the library with readings to compare.</p>
      ) : (
        <DeskTable
          caption="Measured minus library, by vehicle and reading"
          columns={[
            "Vehicle",
            "Reading",
            "Library",
            "Measured",
            "Median difference",
            "Half of them between",
            { name: "", heading: <span class="unseen">Take over</span> },
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
                capital(catalogueEntry(id).name),
                text(packValue),
                n,
                text(median),
                `${text(quarter)} and ${text(threeQuarters)}`,
                offered && (
                  <Button onClick={() => takeOver(row)}>Take over into the library</Button>
                ),
              ],
            };
          })}
        />
      )}
      {shared?.state && (
        <div class="row">
          <Button onClick={offer}>Offer this library to the other desks</Button>
        </div>
      )}
    </section>
  );
}
