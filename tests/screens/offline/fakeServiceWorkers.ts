import type { PageMessage } from "../../../src/screens/offline/messages.ts";

/** A service worker that only does what a test tells it to. */
export class FakeWorker extends EventTarget {
  state: ServiceWorkerState;
  readonly messages: PageMessage[] = [];
  /** The answer to isEverythingKept; undefined gives none. */
  kept: boolean | undefined = true;
  /** The answer to whatIsNew; undefined gives none, as a version before it was asked. */
  changes: readonly string[] | undefined;

  constructor(state: ServiceWorkerState) {
    super();
    this.state = state;
  }

  become(state: ServiceWorkerState): void {
    this.state = state;
    this.dispatchEvent(new Event("statechange"));
  }

  postMessage(message: PageMessage, transfer: MessagePort[] = []): void {
    this.messages.push(message);
    if (message.type === "isEverythingKept" && this.kept !== undefined) {
      transfer[0]?.postMessage({ kept: this.kept });
    }
    if (message.type === "whatIsNew" && this.changes !== undefined) {
      transfer[0]?.postMessage({ changes: this.changes });
    }
  }
}

export class FakeRegistration extends EventTarget {
  installing: FakeWorker | null = null;
  waiting: FakeWorker | null = null;
  active: FakeWorker | null = null;
  updates = 0;

  update(): Promise<void> {
    this.updates++;
    return Promise.reject(new TypeError("no signal"));
  }

  find(worker: FakeWorker): void {
    this.installing = worker;
    this.dispatchEvent(new Event("updatefound"));
  }

  /** The found worker has fetched everything and waits for the pages of the one before. */
  letWait(): void {
    const worker = this.installing;
    this.installing = null;
    this.waiting = worker;
    worker?.become("installed");
  }
}

export class FakeContainer extends EventTarget {
  controller: FakeWorker | null = null;
  readonly registration = new FakeRegistration();
  refusal: Error | undefined;
  readonly registered: { url: string; options: RegistrationOptions }[] = [];

  register(url: string, options: RegistrationOptions): Promise<FakeRegistration> {
    this.registered.push({ url, options });
    return this.refusal ? Promise.reject(this.refusal) : Promise.resolve(this.registration);
  }

  removed = false;

  getRegistration(): Promise<FakeRegistration | undefined> {
    return Promise.resolve(this.removed ? undefined : this.registration);
  }

  control(worker: FakeWorker): void {
    this.controller = worker;
    this.dispatchEvent(new Event("controllerchange"));
  }

  asContainer(): ServiceWorkerContainer {
    return this as unknown as ServiceWorkerContainer;
  }
}

/** A page on a phone that has had the app before: one active worker, which controls it. */
export function secondVisit(): { container: FakeContainer; active: FakeWorker } {
  const container = new FakeContainer();
  const active = new FakeWorker("activated");
  container.registration.active = active;
  container.controller = active;
  return { container, active };
}
