import { demoPack } from "../../src/records/pack/demoPack.ts";
import type { Pack, PackStop, Platform } from "../../src/records/pack/pack.ts";

function withNumber(stop: PackStop, place: number): PackStop {
  const height = 40 + (place % 60);
  const share = height / (stop.freeHeight.values[0] ?? height);
  const { tests: _tests, ...kept } = stop;
  return {
    ...kept,
    id: `stop-${place}`,
    partNumber: `HL-${10_000 + place}`,
    revision: "ABC"[place % 3] ?? "A",
    name: `${stop.name} ${height}`,
    freeHeight: { values: [height], tol: 1 },
    usableCompressionMm: share * stop.usableCompressionMm,
    curve: stop.curve.map(([depth, force]) => [share * depth, force * (1 + (place % 7) / 10)]),
    ...(stop.damping && {
      damping: stop.damping.map(([depth, into, out]) => [share * depth, into, out] as const),
    }),
  };
}

function ofYear(platform: Platform, place: number): Platform {
  const from = 1995 + (place % 30);
  return {
    ...platform,
    id: `platform-${place}`,
    label: `${platform.label} ${1 + (place % 40)}`,
    years: { from, to: from + 4 },
    trims: ["Base", `Trail ${place % 9}`],
    usualStop: `stop-${place}`,
  };
}

/** A pack as large as a maker of many parts has it: the demonstration's stops and vehicles in many sizes and years. */
export function largePack(stops = 500, platforms = 300): Pack {
  const each = <Item>(items: readonly Item[], place: number): Item => {
    const item = items[place % items.length];
    if (item === undefined) throw new Error("The demonstration's pack is empty.");
    return item;
  };
  const sound = demoPack.stops.filter(({ estimated }) => estimated === undefined);
  return {
    ...demoPack,
    name: "Large pack",
    stops: Array.from({ length: stops }, (_, place) => withNumber(each(sound, place), place)),
    platforms: Array.from({ length: platforms }, (_, place) =>
      ofYear(each(demoPack.platforms, place), place),
    ),
  };
}
