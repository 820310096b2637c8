import type { BrowserContext, Page } from "playwright-core";

/** One thing asked of the calculation's worker, and when its answers came, ms of the page's clock. */
export interface Asked {
  readonly kind: string;
  readonly lane: string;
  readonly sent: number;
  readonly replies: { readonly kind: string; readonly last: boolean; readonly at: number }[];
}

/** Has every page of this context note what it asks of its workers. */
export async function logWorkers(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const asked = new Map<number, Asked>();
    Object.assign(globalThis, { askedOfWorkers: asked });
    const Plain = globalThis.Worker;
    globalThis.Worker = class extends Plain {
      constructor(address: string | URL, options?: WorkerOptions) {
        super(address, options);
        this.addEventListener("message", ({ data }) => {
          asked
            .get(data.ticket)
            ?.replies.push({ kind: data.kind, last: data.last, at: performance.now() });
        });
      }

      override postMessage(message: { ticket: number; kind: string; lane?: string }): void {
        if (message.kind !== "cancel") {
          const { kind, lane = "" } = message;
          asked.set(message.ticket, { kind, lane, sent: performance.now(), replies: [] });
        }
        super.postMessage(message);
      }
    };
  });
}

export async function forgetAsked(page: Page): Promise<void> {
  await page.evaluate(() => {
    (globalThis as unknown as { askedOfWorkers: Map<number, Asked> }).askedOfWorkers.clear();
  });
}

export async function askedOfWorkers(page: Page): Promise<Asked[]> {
  return page.evaluate(() => [
    ...(globalThis as unknown as { askedOfWorkers: Map<number, Asked> }).askedOfWorkers.values(),
  ]);
}
