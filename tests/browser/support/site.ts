import type { Server } from "node:http";
import { createStaticServer, listenLocally } from "../../../src/tooling/serve.mjs";

/** The address the app is published at; its release can change and its signal can go. */
export class Site {
  private server: Server | null = null;
  private port = 0;

  /** `base` is the path it is published below, with a slash at both ends. */
  constructor(private readonly base = "/") {}

  get address(): string {
    return `http://127.0.0.1:${this.port}${this.base}`;
  }

  get origin(): string {
    return `http://127.0.0.1:${this.port}`;
  }

  /** Puts a build on line in place of what was there. */
  async publish(folder: string): Promise<void> {
    await this.close();
    this.server = createStaticServer(folder, this.base);
    this.port = await listenLocally(this.server, this.port);
  }

  async close(): Promise<void> {
    const server = this.server;
    this.server = null;
    if (!server) return;
    await new Promise<void>((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  }
}
