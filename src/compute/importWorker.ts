import { importFile } from "../records/testRows/importFile.ts";
import type { ImportReply, ImportRequest } from "./importMessages.ts";

function reply(message: ImportReply): void {
  self.postMessage(message);
}

self.onmessage = async ({ data }: MessageEvent<ImportRequest>) => {
  const imported = await importFile(data.file, data.options, (progress) =>
    reply({ kind: "progress", progress }),
  );
  reply(
    imported.ok
      ? { kind: "done", result: imported.value }
      : { kind: "fault", fault: imported.fault },
  );
};
