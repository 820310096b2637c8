import { writeFileSync } from "node:fs";
import type { Page } from "playwright-core";

const width = 1280;
const height = 720;

/**
 * A camera's film, for Chromium to play as its camera: each screenshot as a camera of 1280 × 720 would
 * see it, the code `codePixels` wide, a little turned and out of focus. Played over and over.
 */
export async function writeFilm(
  page: Page,
  file: string,
  screenshots: readonly { readonly png: Buffer; readonly codePixels: number }[],
): Promise<void> {
  const parts: Buffer[] = [Buffer.from(`YUV4MPEG2 W${width} H${height} F4:1 Ip A1:1 C420jpeg\n`)];
  const grey = Buffer.alloc((width * height) / 2, 128);
  for (const { png, codePixels } of screenshots) {
    for (const turn of [-0.03, 0.02, 0.05]) {
      const seen = await page.evaluate(
        async ({ source, codePixels, turn, width, height }) => {
          const bitmap = await createImageBitmap(await (await fetch(source)).blob());
          const canvas = new OffscreenCanvas(width, height);
          const context = canvas.getContext("2d");
          if (!context) throw new Error("no canvas");
          context.fillStyle = "#5a5a5a";
          context.fillRect(0, 0, width, height);
          context.filter = "blur(0.7px) contrast(0.7)";
          context.translate(width / 2, height / 2);
          context.rotate(turn);
          context.imageSmoothingQuality = "high";
          const tall = (codePixels * bitmap.height) / bitmap.width;
          context.drawImage(bitmap, -codePixels / 2, -tall / 2, codePixels, tall);
          const { data } = context.getImageData(0, 0, width, height);
          let text = "";
          for (let at = 1; at < data.length; at += 4) text += String.fromCharCode(data[at] ?? 0);
          return btoa(text);
        },
        {
          source: `data:image/png;base64,${png.toString("base64")}`,
          codePixels,
          turn,
          width,
          height,
        },
      );
      parts.push(Buffer.from("FRAME\n"), Buffer.from(seen, "base64"), grey);
    }
  }
  writeFileSync(file, Buffer.concat(parts));
}
