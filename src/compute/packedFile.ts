/** Whether a file is to be taken apart before it is read: an archive by its first bytes, a mail by its name. */
export async function isPacked(file: File): Promise<boolean> {
  return isMail(file) || (await isZip(file));
}

export async function isZip(file: File): Promise<boolean> {
  if (file.size < 22) return false;
  const head = new Uint8Array(
    await file
      .slice(0, 4)
      .arrayBuffer()
      .catch(() => new ArrayBuffer(0)),
  );
  return head[0] === 0x50 && head[1] === 0x4b && head[2] === 3 && head[3] === 4;
}

export function isMail({ name, type }: File): boolean {
  return /\.eml$/i.test(name) || type === "message/rfc822";
}
