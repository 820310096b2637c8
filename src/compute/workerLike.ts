/** As much of a Worker as its clients use, so that a test can stand in for one. */
export interface WorkerLike<Request, Reply> {
  postMessage(message: Request, handedOver?: Transferable[]): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Reply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
}

/** Follows a worker: each reply, and once it can give none any more, that it is lost. */
export function follow<Request, Reply>(
  worker: WorkerLike<Request, Reply>,
  onReply: (reply: Reply) => void,
  onLost: () => void,
): void {
  worker.onmessage = ({ data }) => onReply(data);
  worker.onerror = (event) => {
    event.preventDefault?.();
    onLost();
  };
  worker.onmessageerror = onLost;
}
