import { vi } from "vitest";

/** What a page saved by a link with a file behind it. */
interface Download {
  readonly tag: string;
  readonly name: string;
  readonly file: Blob | undefined;
  /** Did the link stand in the page, unseen, as it was tapped? */
  readonly within: boolean;
  readonly hidden: boolean;
}

/** A page as a download needs it, stubbed until all globals are again as they were. */
export function fakeDownloads() {
  const downloads: Download[] = [];
  const files = new Map<string, Blob>();
  const standing = new Set<object>();
  const createElement = (tag: string) => {
    const link = {
      href: "",
      download: "",
      hidden: false,
      click: () => {
        downloads.push({
          tag,
          name: link.download,
          file: files.get(link.href),
          within: standing.has(link),
          hidden: link.hidden,
        });
      },
      remove: () => standing.delete(link),
    };
    return link;
  };
  vi.stubGlobal("document", {
    createElement,
    body: { append: (link: object) => standing.add(link) },
  });
  vi.stubGlobal("URL", {
    createObjectURL: (file: Blob) => {
      const address = `blob:${files.size}`;
      files.set(address, file);
      return address;
    },
    revokeObjectURL: (address: string) => files.delete(address),
  });
  return { downloads, addressesHeld: () => files.size, linksLeft: () => standing.size };
}
