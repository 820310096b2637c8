import { connect, type Socket } from "node:net";
import { setTimeout as pause } from "node:timers/promises";

interface Pending {
  done(result: unknown): void;
  failed(error: Error): void;
}

/**
 * WebDriver's commands in Firefox's own transport, beside the BiDi session that the page objects use: a length, a
 * colon and JSON (https://firefox-source-docs.mozilla.org/testing/marionette/Protocol.html).
 */
export class Marionette {
  #received = Buffer.alloc(0);
  #asked = 0;
  readonly #pending = new Map<number, Pending>();

  private constructor(private readonly socket: Socket) {
    socket.on("data", (data) => this.#take(data));
    socket.on("error", (error) => this.#end(error));
    socket.on("close", () => this.#end(new Error("Firefox closed Marionette's socket.")));
  }

  static async open(port: number): Promise<Marionette> {
    for (let tries = 0; ; tries++) {
      try {
        const socket = await new Promise<Socket>((done, failed) => {
          const opening = connect(port, "127.0.0.1", () => done(opening));
          opening.once("error", failed);
        });
        const marionette = new Marionette(socket);
        await marionette.command("WebDriver:NewSession", { capabilities: { alwaysMatch: {} } });
        return marionette;
      } catch (error) {
        if (tries === 40) throw error;
        await pause(250);
      }
    }
  }

  command(name: string, parameters: object = {}): Promise<unknown> {
    const id = ++this.#asked;
    const text = JSON.stringify([0, id, name, parameters]);
    return new Promise((done, failed) => {
      this.#pending.set(id, { done, failed });
      this.socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
  }

  close(): void {
    this.socket.destroy();
  }

  #take(data: Buffer): void {
    this.#received = Buffer.concat([this.#received, data]);
    for (;;) {
      const colon = this.#received.indexOf(":");
      if (colon < 0) return;
      const end = colon + 1 + Number(this.#received.toString("latin1", 0, colon));
      if (this.#received.length < end) return;
      const message = JSON.parse(this.#received.toString("utf8", colon + 1, end)) as unknown;
      this.#received = this.#received.subarray(end);
      if (Array.isArray(message)) this.#answer(message);
    }
  }

  #answer([, id, error, result]: readonly unknown[]): void {
    const pending = this.#pending.get(Number(id));
    this.#pending.delete(Number(id));
    if (error === null) pending?.done(result);
    else {
      const { error: kind, message } = error as { error: string; message: string };
      pending?.failed(new Error(`Marionette: ${kind}: ${message}`));
    }
  }

  #end(error: Error): void {
    for (const { failed } of this.#pending.values()) failed(error);
    this.#pending.clear();
  }
}
