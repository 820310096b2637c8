/** As much of the Launch Handler API's LaunchParams as is used here. */
interface LaunchParams {
  readonly files?: readonly { getFile(): Promise<File> }[];
}

interface LaunchQueue {
  setConsumer(consumer: (params: LaunchParams) => void): void;
}

/** Files that the device opened the installed app with: the manifest's file_handlers. */
export function onLaunchedFiles(take: (files: readonly File[]) => void): void {
  const queue = (globalThis as { launchQueue?: LaunchQueue }).launchQueue;
  queue?.setConsumer(({ files = [] }) => {
    if (files.length === 0) return;
    Promise.allSettled(files.map((handle) => handle.getFile())).then((results) => {
      const read = results.flatMap((result) =>
        result.status === "fulfilled" ? [result.value] : [],
      );
      if (read.length > 0) take(read);
    });
  });
}
