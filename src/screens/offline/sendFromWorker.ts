import { wsconnect } from "@nats-io/nats-core";
import { readDeskAddress } from "../../engine/address.ts";
import { sendOutbox } from "../../engine/sendOutbox.ts";
import { OutboxStore } from "../../storage/outboxStore.ts";
import { outboxLock } from "./messages.ts";

/** Sends what waits. Where it fails the browser tries again later, as it sees fit. */
export async function sendFromWorker(): Promise<void> {
  const address = readDeskAddress(import.meta.env.VITE_DESK);
  if (!address.ok) return;
  const store = new OutboxStore();
  const work = () => sendOutbox(store, address.value, wsconnect);
  const fault = await (navigator.locks ? navigator.locks.request(outboxLock, work) : work());
  store.close();
  if (fault !== null) throw new Error(fault.code);
}
