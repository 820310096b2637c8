/**
 * What goes through the engine, and under which subject. A subject's second part is who published it, put
 * there by the engine's own permissions: a phone by its public key, a person of the desk by name.
 */

/** Streams, all only ever added to but PERSONAL, which forgets by age and by check. */
export const streams = {
  /** What was read under a vehicle, and that a reply was fetched. */
  inbox: "INBOX",
  /** Names, ways to answer, notes and photos. */
  personal: "PERSONAL",
  decisions: "DECISIONS",
  replies: "REPLIES",
  packs: "PACKS",
} as const;

export type StreamName = (typeof streams)[keyof typeof streams];

/** The bucket of who looks at which check, and who took it. */
export const handsBucket = "HANDS";
/** After this time without a sign a look or a claim is over, ms. */
export const handsLastMs = 45_000;

/** The greatest message that is taken, bytes. */
export const greatestMessage = 1_048_576;

export const subjectOf = {
  readings: (sender: string, check: string, hash: string) => `inbox.${sender}.${check}.${hash}`,
  fetched: (sender: string, check: string, reply: string) => `fetched.${sender}.${check}.${reply}`,
  personal: (sender: string, check: string, hash: string) => `personal.${sender}.${check}.${hash}`,
  decision: (person: string, check: string, key: string) => `decision.${person}.${check}.${key}`,
  reply: (sender: string, check: string) => `reply.${sender}.${check}`,
  pack: (person: string, offer: string) => `pack.${person}.${offer}`,
} as const;

/** All that is personal of one check, whoever sent it. */
export function personalOf(check: string): string {
  return `personal.*.${check}.>`;
}

/** What a person's name at the engine may be: it stands in subjects. */
export const personName = /^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/;

export interface Permissions {
  readonly publish: readonly string[];
  readonly subscribe: readonly string[];
}

/** The engine fills these in for each connection: its public key, and the name in its credential. */
const own = "{{subject()}}";
const ownName = "{{name()}}";

/** Answers come here, where nobody else may listen. */
export function inboxPrefix(publicKey: string): string {
  return `_INBOX.${publicKey}`;
}

/** A phone adds to the inbox under its own key, and asks for replies to its own key; nothing else. */
export const senderPermissions: Permissions = {
  publish: [
    `inbox.${own}.*.*`,
    `fetched.${own}.*.*`,
    `personal.${own}.*.*`,
    `$JS.API.DIRECT.GET.${streams.replies}.${subjectOf.reply(own, "*")}`,
  ],
  subscribe: [`${inboxPrefix(own)}.>`],
};

const read = [...Object.values(streams), `KV_${handsBucket}`].flatMap((stream) => [
  `$JS.API.STREAM.INFO.${stream}`,
  `$JS.API.CONSUMER.CREATE.${stream}.>`,
  `$JS.API.CONSUMER.INFO.${stream}.*`,
  `$JS.API.CONSUMER.DELETE.${stream}.*`,
  `$JS.API.CONSUMER.MSG.NEXT.${stream}.*`,
  `$JS.API.STREAM.MSG.GET.${stream}`,
  `$JS.API.DIRECT.GET.${stream}`,
  `$JS.API.DIRECT.GET.${stream}.>`,
]);

/** A person of the desk reads all, decides and replies under the own name, and erases what is personal. */
export const deskPermissions: Permissions = {
  publish: [
    `decision.${ownName}.*.*`,
    "reply.*.*",
    `pack.${ownName}.*`,
    `$KV.${handsBucket}.*.${ownName}`,
    "$JS.API.INFO",
    ...read,
    `$JS.API.STREAM.PURGE.${streams.personal}`,
    "$JS.FC.>",
  ],
  subscribe: [`${inboxPrefix(own)}.>`],
};

export interface SubjectParts {
  readonly kind: string;
  /** The phone's public key, or the name of the person. */
  readonly by: string;
  readonly check: string;
  readonly key: string;
}

export function subjectParts(subject: string): SubjectParts {
  const [kind = "", by = "", check = "", key = ""] = subject.split(".");
  return { kind, by, check, key };
}
