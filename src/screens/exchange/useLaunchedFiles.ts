import { useEffect, useState } from "preact/hooks";
import { onLaunchedFiles } from "../../sharing/launchedFiles.ts";
import { goTo } from "../addresses.ts";
import { receivedHref } from "./shareRoutes.ts";

/** Files that the device opened the app with; goes to where they are shown. */
export function useLaunchedFiles(): readonly File[] {
  const [files, setFiles] = useState<readonly File[]>([]);
  useEffect(() => {
    onLaunchedFiles((launched) => {
      setFiles(launched);
      goTo(receivedHref);
    });
  }, []);
  return files;
}
