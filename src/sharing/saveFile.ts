/** Has the browser save a file. Needs a document; throws only where the browser itself does. */
export function saveFile(file: File): void {
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
