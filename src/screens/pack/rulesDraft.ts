import type { DesignEvent, RoadClass, Use, UseRules } from "../../physics/fitment.ts";
import { catalogueEntry } from "../../records/entry/readingCatalogue.ts";
import { type LengthUnit, plainDecimal } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { DraftReader, type FieldFault, type ItemDraft, numberText } from "./itemDraft.ts";
import { fieldLabel } from "./platformDraft.ts";

const usesOfRules: readonly Use[] = ["daily", "towing", "offroad"];
export const ruleNumbers = [
  "speedKmPerH",
  "allowedContactsPerKm",
  "accelerationCapG",
  "reserveMm",
  "balanceMm",
] as const;

/** The pack's own name and notes, and its rules of each use. */
export function rulesDraft(pack: Pack, unit: LengthUnit): ItemDraft {
  const texts: { [field: string]: string } = {
    name: pack.name,
    notes: pack.notes ?? "",
    maker: pack.maker?.name ?? "",
    makerAddress: pack.maker?.address ?? "",
  };
  const tables: { [field: string]: readonly string[] } = {};
  for (const use of usesOfRules) {
    const rules = pack.rules?.[use] ?? {};
    texts[`${use}.roadClass`] = rules.roadClass ?? "";
    for (const name of ruleNumbers) {
      texts[`${use}.${name}`] = numberText(rules[name], catalogueEntry(name).kind, unit);
    }
    const cells = { obstacles: [] as string[], landings: [] as string[] };
    for (const event of rules.events ?? []) {
      if (event.kind === "landing") cells.landings.push(plainDecimal(event.heightM));
      else if (event.kind === "obstacle") {
        cells.obstacles.push(
          plainDecimal(event.heightM),
          plainDecimal(event.lengthM),
          plainDecimal(event.speedKmPerH),
        );
      }
    }
    tables[`${use}.obstacles`] = cells.obstacles;
    tables[`${use}.landings`] = cells.landings;
  }
  return { unit, texts, tables };
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
  const numbers: { [Name in (typeof ruleNumbers)[number]]?: number } = {};
  for (const name of ruleNumbers) {
    const { kind, allowed } = catalogueEntry(name);
    const value = reader.number(`${use}.${name}`, `${use}, ${fieldLabel(name)}`, kind, allowed);
    if (value !== undefined) numbers[name] = value;
  }
  const events: DesignEvent[] = [];
  for (const row of reader.table(`${use}.obstacles`, `${use}, obstacles`, 3) ?? []) {
    const [heightM = 0, lengthM = 0, speedKmPerH = 0] = row;
    events.push({ kind: "obstacle", heightM, lengthM, speedKmPerH });
  }
  events.push(...(base.events ?? []).filter(({ kind }) => kind === "hump"));
  for (const [heightM = 0] of reader.table(`${use}.landings`, `${use}, landings`, 1) ?? []) {
    events.push({ kind: "landing", heightM });
  }
  const road = reader.text(`${use}.roadClass`);
  const rules: Partial<UseRules> = {
    ...kept,
    ...(road !== undefined && { roadClass: road as RoadClass }),
    ...numbers,
    ...(events.length > 0 && { events }),
  };
  return Object.keys(rules).length === 0 ? null : rules;
}

export function packOfRulesDraft(
  draft: ItemDraft,
  pack: Pack,
): { readonly pack: Pack | null; readonly faults: readonly FieldFault[] } {
  const reader = new DraftReader(draft);
  const name = reader.neededText("name", "Name of the pack");
  const notes = reader.text("notes");
  const [maker, address] = [reader.text("maker") ?? "", reader.text("makerAddress") ?? ""];
  const rules: { [Each in Use]?: Partial<UseRules> } = {};
  for (const use of usesOfRules) {
    const own = rulesOfUse(reader, use, pack.rules?.[use] ?? {});
    if (own !== null) rules[use] = own;
  }
  if (reader.faults.length > 0) return { pack: null, faults: reader.faults };
  const { notes: _notes, rules: _rules, maker: _maker, ...kept } = pack;
  return {
    pack: {
      ...kept,
      name,
      ...(notes !== undefined && { notes }),
      ...((maker || address) && { maker: { ...pack.maker, name: maker, address } }),
      ...(Object.keys(rules).length > 0 && { rules }),
    },
    faults: [],
  };
}
