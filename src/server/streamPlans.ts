import { DiscardPolicy, RetentionPolicy, StorageType, type StreamConfig } from "@nats-io/jetstream";
import { nanos } from "@nats-io/nats-core";
import {
  greatestMessage,
  handsBucket,
  handsLastMs,
  type StreamName,
  streams,
} from "../engine/subjects.ts";

export interface StreamLimits {
  /** Of the inbox, bytes; each other stream has a share of it. */
  readonly inboxBytes: number;
  /** How long names and photos are kept. */
  readonly personalDays: number;
}

export const usualLimits: StreamLimits = { inboxBytes: 4 * 1024 ** 3, personalDays: 365 };

const day = 24 * 60 * 60 * 1000;

type Plan = Partial<StreamConfig> & { readonly name: string };

/** A stream to which one only ever adds, each subject once: what is sent again is there already. */
function kept(name: StreamName, subjects: string[], bytes: number): Plan {
  return {
    name,
    subjects,
    max_bytes: bytes,
    max_msg_size: greatestMessage,
    max_msgs_per_subject: 1,
    discard_new_per_subject: true,
    deny_delete: true,
    deny_purge: true,
    duplicate_window: nanos(10 * 60 * 1000),
  };
}

/** Every stream as it is to be, on one node or on three. */
export function streamPlans(
  nodes: number,
  { inboxBytes, personalDays }: StreamLimits = usualLimits,
): readonly Plan[] {
  const everywhere = {
    num_replicas: nodes >= 3 ? 3 : 1,
    storage: StorageType.File,
    retention: RetentionPolicy.Limits,
    discard: DiscardPolicy.New,
    allow_direct: true,
    allow_rollup_hdrs: false,
  };
  const plans: readonly Plan[] = [
    kept(streams.inbox, ["inbox.*.*.*", "fetched.*.*.*"], inboxBytes),
    {
      ...kept(streams.personal, ["personal.*.*.*"], 4 * inboxBytes),
      max_age: nanos(personalDays * day),
      deny_purge: false,
    },
    kept(streams.decisions, ["decision.*.*.*"], inboxBytes),
    {
      ...kept(streams.replies, ["reply.*.*"], inboxBytes),
      max_msgs_per_subject: -1,
      discard_new_per_subject: false,
    },
    kept(streams.packs, ["pack.*.*"], inboxBytes),
    {
      name: `KV_${handsBucket}`,
      subjects: [`$KV.${handsBucket}.>`],
      max_msgs_per_subject: 1,
      max_age: nanos(handsLastMs),
      max_bytes: 16 * 1024 ** 2,
      max_msg_size: 4096,
      duplicate_window: nanos(handsLastMs),
      storage: StorageType.Memory,
      allow_rollup_hdrs: true,
    },
  ];
  return plans.map((plan) => ({ ...everywhere, ...plan }));
}
