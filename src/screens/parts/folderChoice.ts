/** Can a field for files take a whole folder? Phones have the property and no folders to choose from. */
export function canChooseFolder(): boolean {
  return "webkitdirectory" in HTMLInputElement.prototype && matchMedia("(pointer: fine)").matches;
}
