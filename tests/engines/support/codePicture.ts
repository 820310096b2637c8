import { writeFileSync } from "node:fs";
import type { Page } from "playwright-core";

/** The codes of a check as pictures, one file each, as sharp as a phone's screen shows them. */
export async function saveCodePictures(page: Page, name: string): Promise<string[]> {
  await page.locator(".code-picture").waitFor();
  const several = page.getByText(/^Code 1 of \d+$/);
  const words = (await several.count()) > 0 ? await several.textContent() : "of 1";
  const files: string[] = [];
  for (let number = 1; number <= Number(words?.split("of ")[1]); number++) {
    if (number > 1) await page.getByRole("button", { name: "Next", exact: true }).click();
    files.push(`${name}-${number}.png`);
    await savePicture(page, files.at(-1) ?? "");
  }
  return files;
}

async function savePicture(page: Page, file: string): Promise<void> {
  const png = (await page.evaluate(async () => {
    const shown = document.querySelector<SVGElement>(".code-picture");
    const side = 6 * Number(shown?.dataset.modules);
    const drawing = shown?.cloneNode(true) as SVGElement;
    drawing.setAttribute("width", `${side}`);
    drawing.setAttribute("height", `${side}`);
    const picture = new Image();
    picture.src = `data:image/svg+xml,${encodeURIComponent(new XMLSerializer().serializeToString(drawing))}`;
    await picture.decode();
    const canvas = document.createElement("canvas");
    canvas.width = side;
    canvas.height = side;
    canvas.getContext("2d")?.drawImage(picture, 0, 0);
    return canvas.toDataURL("image/png").split(",")[1] ?? "";
  })) as string;
  writeFileSync(file, Buffer.from(png, "base64"));
}
