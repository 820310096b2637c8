import { createServer } from "node:net";

/** A port of this machine that nobody listens on. */
export function freePort(): Promise<number> {
  return new Promise((done, failed) => {
    const server = createServer();
    server.once("error", failed);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() =>
        typeof address === "object" && address ? done(address.port) : failed(new Error("no port")),
      );
    });
  });
}
