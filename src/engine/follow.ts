import { DeliverPolicy, jetstream } from "@nats-io/jetstream";
import type { EngineConnection } from "./connection.ts";
import type { StreamName } from "./subjects.ts";

/** One message of a stream. */
export interface Arrived {
  readonly subject: string;
  readonly sequence: number;
  readonly body: string;
  /** When the engine took it, by its own clock. */
  readonly at: string;
}

export interface Following {
  stop(): void;
  /** Ends once it was stopped, or could not go on. */
  readonly ended: Promise<void>;
}

/** At most so many are handed over at once. */
const batchSize = 250;
const waitMs = 25;
const againMs = 1000;

/**
 * Hands over all of a stream after the place `after`, in order, and goes on with what comes. `take` keeps a
 * batch; where it could not (false), the batch comes again.
 */
export function follow(
  { nats }: EngineConnection,
  stream: StreamName,
  after: number,
  take: (batch: readonly Arrived[]) => Promise<boolean>,
): Following {
  let stopped = false;
  let stopReading = (): void => undefined;
  let at = after;
  const run = async (): Promise<void> => {
    const consumer = await jetstream(nats).consumers.get(stream, {
      deliver_policy: DeliverPolicy.StartSequence,
      opt_start_seq: at + 1,
    });
    const messages = await consumer.consume({ max_messages: batchSize });
    stopReading = () => messages.stop();
    if (stopped) return messages.stop();
    let batch: Arrived[] = [];
    let timer: ReturnType<typeof setTimeout> | null = null;
    let keeping: Promise<boolean> = Promise.resolve(true);
    const flush = (): Promise<boolean> => {
      if (timer) clearTimeout(timer);
      timer = null;
      const full = batch;
      batch = [];
      const last = full.at(-1);
      if (last === undefined) return keeping;
      keeping = keeping.then(async (before) => {
        if (!before || stopped) return false;
        const kept = await take(full);
        if (kept) at = last.sequence;
        return kept;
      });
      return keeping;
    };
    for await (const message of messages) {
      batch.push({
        subject: message.subject,
        sequence: message.seq,
        body: message.string(),
        at: message.time.toISOString(),
      });
      if (batch.length >= batchSize || message.info.pending === 0) {
        if (!(await flush())) break;
      } else {
        timer ??= setTimeout(flush, waitMs);
      }
    }
    messages.stop();
    await flush();
  };
  const ended = (async () => {
    while (!stopped && !nats.isClosed()) {
      try {
        await run();
      } catch {
        // No leader now, or the connection is down: from the same place again.
      }
      if (!stopped) await new Promise((resolve) => setTimeout(resolve, againMs));
    }
  })();
  return {
    stop: () => {
      stopped = true;
      stopReading();
    },
    ended,
  };
}
