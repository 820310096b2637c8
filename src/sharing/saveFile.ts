import * as messages from "../words/compiled/sharing.ts";
import type { Message } from "../words/message.ts";
import { canShareFile, share } from "./shareFile.ts";
import { isInstalledOnApple } from "./thisDevice.ts";

function download(file: File): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = file.name;
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  // Some browsers read the address only after the tap has been dealt with.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Where a person finds what was saved by {@link saveFile}. */
export function whereSaved(): Message {
  return isInstalledOnApple() ? messages.chooseInShareSheet : messages.lookAmongBrowsersDownloads;
}

/**
 * Has the browser save a file. Needs a document, and the turn of a tap; throws only where the browser
 * itself does. Where there is no place for downloads, the share sheet offers one; false: the person closed
 * it, and the file is saved nowhere.
 */
export function saveFile(file: File): Promise<boolean> {
  if (!isInstalledOnApple() || !canShareFile(file)) {
    download(file);
    return Promise.resolve(true);
  }
  return share({ files: [file] }).then((shared) => {
    if (!shared.ok) download(file);
    return !shared.ok || shared.value === "handed over";
  });
}
