import { uses } from "../../physics/choices.ts";
import type { DesignEvent, RoadClass, Use, UseRules } from "../../physics/fitment.ts";
import { ruleValueNames } from "../../physics/readings/index.ts";
import { catalogueEntry } from "../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Maker, Pack } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import {
  DraftReader,
  type FieldFault,
  type ItemDraft,
  numberText,
  tableUnitField,
} from "./itemDraft.ts";
import { fieldLabel } from "./platformDraft.ts";

export const obstacleKinds = ["length", "length", "roadSpeed"] as const;
export const landingKinds = ["length"] as const;

/** The pack's own name and notes, and its rules of each use. */
export function rulesDraft(pack: Pack, unit: LengthUnit): ItemDraft {
  const texts: { [field: string]: string } = {
    name: pack.name,
    notes: pack.notes ?? "",
    edition: pack.edition ?? "",
    "maker.name": pack.maker?.name ?? "",
    "maker.code": pack.maker?.code ?? "",
    "maker.address": pack.maker?.address ?? "",
    "maker.contact": pack.maker?.contact ?? "",
    spacers: (pack.spacersMm ?? []).map((mm) => numberText(mm, "length", unit)).join("; "),
  };
  const tables: { [field: string]: readonly string[] } = {};
  for (const use of uses) {
    const rules = pack.rules?.[use] ?? {};
    texts[`${use}.roadClass`] = rules.roadClass ?? "";
    for (const name of ruleValueNames) {
      texts[`${use}.${name}`] = numberText(rules[name], catalogueEntry(name).kind, unit);
    }
    const cells = { obstacles: [] as string[], landings: [] as string[] };
    for (const event of rules.events ?? []) {
      const height = numberText(millimetres(event.heightM), "length", unit);
      if (event.kind === "landing") cells.landings.push(height);
      else if (event.kind === "obstacle") {
        cells.obstacles.push(
          height,
          numberText(millimetres(event.lengthM), "length", unit),
          numberText(event.speedKmPerH, "roadSpeed", unit),
        );
      }
    }
    for (const name of ["obstacles", "landings"] as const) {
      tables[`${use}.${name}`] = cells[name];
      texts[tableUnitField(`${use}.${name}`)] = unit;
    }
  }
  return { unit, texts, tables };
}

/** To a thousandth of a millimeter, so that what was not changed stays the same number. */
function millimetres(metres: number): number {
  return Number((1000 * metres).toFixed(6));
}

function metres(millimetres: number): number {
  return Number((millimetres / 1000).toFixed(9));
}

function rulesOfUse(
  reader: DraftReader,
  use: Use,
  base: Partial<UseRules>,
): Partial<UseRules> | null {
  const {
    roadClass: _road,
    speedKmPerH: _speed,
    allowedContactsPerKm: _contacts,
    accelerationCapG: _cap,
    reserveMm: _reserve,
    balanceMm: _balance,
    events: _events,
    ...kept
  } = base;
  const numbers: { [Name in (typeof ruleValueNames)[number]]?: number } = {};
  for (const name of ruleValueNames) {
    const { kind, allowed } = catalogueEntry(name);
    const value = reader.number(
      `${use}.${name}`,
      messages.numberOfUse({ use, label: fieldLabel(name) }),
      kind,
      allowed,
    );
    if (value !== undefined) numbers[name] = value;
  }
  const events: DesignEvent[] = [];
  const obstacles =
    reader.table(`${use}.obstacles`, messages.obstacles2({ use }), 3, obstacleKinds) ?? [];
  for (const [height = 0, length = 0, speedKmPerH = 0] of obstacles) {
    events.push({
      kind: "obstacle",
      heightM: metres(height),
      lengthM: metres(length),
      speedKmPerH,
    });
  }
  events.push(...(base.events ?? []).filter(({ kind }) => kind === "hump"));
  const landings =
    reader.table(`${use}.landings`, messages.landings2({ use }), 1, landingKinds) ?? [];
  for (const [height = 0] of landings) events.push({ kind: "landing", heightM: metres(height) });
  const road = reader.text(`${use}.roadClass`);
  const rules: Partial<UseRules> = {
    ...kept,
    ...(road !== undefined && { roadClass: road as RoadClass }),
    ...numbers,
    ...(events.length > 0 && { events }),
  };
  return Object.keys(rules).length === 0 ? null : rules;
}

/** Who makes the stops; a code of the labels is made of the name where none is given. */
function makerOf(reader: DraftReader): Maker | undefined {
  const name = reader.text("maker.name");
  const code = reader.text("maker.code")?.toUpperCase();
  const address = reader.text("maker.address");
  const contact = reader.text("maker.contact");
  if (name === undefined) {
    if (code ?? contact) reader.fault("maker.name", messages.makerNothingIsEntered);
    return address === undefined ? undefined : { name: "", address };
  }
  return {
    name,
    ...(code !== undefined && { code }),
    ...(address !== undefined && { address }),
    ...(contact !== undefined && { contact }),
  };
}

export function packOfRulesDraft(
  draft: ItemDraft,
  pack: Pack,
): { readonly pack: Pack | null; readonly faults: readonly FieldFault[] } {
  const reader = new DraftReader(draft);
  const name = reader.neededText("name", messages.nameOfLibrary);
  const notes = reader.text("notes");
  const edition = reader.text("edition");
  const maker = makerOf(reader);
  const spacersMm = reader.list("spacers", messages.spacers, "length");
  const rules: { [Each in Use]?: Partial<UseRules> } = {};
  for (const use of uses) {
    const own = rulesOfUse(reader, use, pack.rules?.[use] ?? {});
    if (own !== null) rules[use] = own;
  }
  if (reader.faults.length > 0) return { pack: null, faults: reader.faults };
  const { notes: _notes, rules: _rules, edition: _edition, maker: _maker, ...rest } = pack;
  const { spacersMm: _spacers, ...kept } = rest;
  const { code: _code, address: _address, contact: _contact, ...keptMaker } = pack.maker ?? {};
  return {
    pack: {
      ...kept,
      name,
      ...(edition !== undefined && { edition }),
      ...(maker !== undefined && { maker: { ...keptMaker, ...maker } }),
      ...(spacersMm !== undefined && { spacersMm }),
      ...(notes !== undefined && { notes }),
      ...(Object.keys(rules).length > 0 && { rules }),
    },
    faults: [],
  };
}
