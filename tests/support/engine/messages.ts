import type { EngineConnection } from "../../../src/engine/connection.ts";
import { type Arrived, follow } from "../../../src/engine/follow.ts";
import type { Outgoing } from "../../../src/engine/publish.ts";
import { type StreamName, subjectOf } from "../../../src/engine/subjects.ts";
import { contentHash } from "../../../src/records/exchanged/contentHash.ts";

/** A submission as a phone sends it. */
export const sent = async (sender: string, check: string, body: string): Promise<Outgoing> => {
  const hash = await contentHash(body);
  return { subject: subjectOf.readings(sender, check, hash), hash, body };
};

/** All of a stream, as a desk gets it that has read up to `after`. */
export async function allOf(desk: EngineConnection, stream: StreamName, count: number, after = 0) {
  const got: Arrived[] = [];
  await new Promise<void>((resolve) => {
    const following = follow(desk, stream, after, async (batch) => {
      got.push(...batch);
      if (got.length >= count) {
        following.stop();
        resolve();
      }
      return true;
    });
  });
  return got;
}
