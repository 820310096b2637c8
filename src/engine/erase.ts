import { jetstreamManager } from "@nats-io/jetstream";
import type { Outcome } from "../physics/outcome.ts";
import type { EngineConnection } from "./connection.ts";
import { faultOf } from "./engineFaults.ts";
import { personalOf, streams } from "./subjects.ts";

/** Takes names, notes and photos of one check out of the engine; how many messages went. */
export async function erasePersonal(
  { nats }: Pick<EngineConnection, "nats">,
  check: string,
): Promise<Outcome<number>> {
  try {
    const manager = await jetstreamManager(nats, { checkAPI: false });
    const { purged } = await manager.streams.purge(streams.personal, { filter: personalOf(check) });
    return { ok: true, value: purged };
  } catch (error) {
    return { ok: false, fault: faultOf(error) };
  }
}

/** How long the engine keeps what is personal, ms; null: it does not say. */
export async function personalLasts({ nats }: EngineConnection): Promise<number | null> {
  try {
    const manager = await jetstreamManager(nats, { checkAPI: false });
    const { config } = await manager.streams.info(streams.personal);
    return config.max_age > 0 ? config.max_age / 1e6 : null;
  } catch {
    return null;
  }
}
