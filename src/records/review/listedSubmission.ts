import type { Computed, Submission } from "./submission.ts";

/** What the desk's list holds of a version in memory: enough for its row, its order and its search. */
export interface Listed
  extends Pick<
    Submission,
    | "key"
    | "checkId"
    | "vehicle"
    | "axle"
    | "stop"
    | "who"
    | "role"
    | "contact"
    | "createdAt"
    | "receivedAt"
    | "sentAt"
    | "from"
    | "place"
    | "way"
    | "photosLeftOut"
    | "isComputed"
    | "jobId"
    | "job"
    | "jobNumber"
  > {
  readonly computed?: Pick<Computed, "verdict" | "odd">;
}

const fields = [
  "key",
  "checkId",
  "vehicle",
  "axle",
  "stop",
  "who",
  "role",
  "contact",
  "createdAt",
  "receivedAt",
  "sentAt",
  "from",
  "place",
  "way",
  "photosLeftOut",
  "isComputed",
  "computed",
  "jobId",
  "job",
  "jobNumber",
] as const satisfies readonly (keyof Listed)[];

export function listedOf(submission: Listed): Listed {
  const { computed, ...all } = submission;
  const entries = fields.flatMap((name) =>
    name !== "computed" && all[name] !== undefined ? [[name, all[name]]] : [],
  );
  const listed = Object.fromEntries(entries) as Listed;
  return computed === undefined
    ? listed
    : { ...listed, computed: { verdict: computed.verdict, odd: computed.odd } };
}

/** Many of them as one text: rows without names, which is read far sooner than as many entries. */
export function listText(all: readonly Listed[]): string {
  return JSON.stringify(
    all.map((each) => {
      const { computed } = each;
      const short = computed === undefined ? null : [computed.verdict, computed.odd];
      return fields.map((name) => (name === "computed" ? short : (each[name] ?? null)));
    }),
  );
}

type Cell = string | number | null | readonly [string, number];

export function readListText(text: string): Listed[] {
  const rows = JSON.parse(text) as readonly (readonly Cell[])[];
  return rows.map((row) => {
    const listed: { [name: string]: unknown } = {};
    for (let index = 0; index < fields.length; index += 1) {
      const cell = row[index];
      const name = fields[index];
      if (cell === null || cell === undefined || name === undefined) continue;
      listed[name] = Array.isArray(cell) ? { verdict: cell[0], odd: cell[1] } : cell;
    }
    return listed as unknown as Listed;
  });
}
