import type { Page } from "playwright-core";

/** A live drawing: how many different colours its picture has, and its size in px. */
export interface Drawing {
  readonly colours: number;
  readonly width: number;
  readonly height: number;
}

/** The live drawings of the page, each brought into view first, as one that is out of sight may not be drawn yet. */
export async function drawings(page: Page): Promise<Drawing[]> {
  const found: Drawing[] = [];
  const embeds = page.locator(".jp-OutputArea-output .vega-embed");
  for (let at = 0; at < (await embeds.count()); at += 1) {
    const embed = embeds.nth(at);
    await embed.scrollIntoViewIfNeeded();
    await embed.locator("canvas, svg").first().waitFor({ timeout: 20_000 });
    found.push(
      await embed.evaluate((element) => {
        const canvas = element.querySelector("canvas");
        const { width, height } = element.getBoundingClientRect();
        if (canvas === null) return { colours: element.querySelectorAll("svg path").length, width, height };
        const pixels = canvas.getContext("2d")!.getImageData(0, 0, canvas.width, canvas.height).data;
        const colours = new Set<number>();
        for (let i = 0; i < pixels.length; i += 4) colours.add((pixels[i]! << 16) | (pixels[i + 1]! << 8) | pixels[i + 2]!);
        return { colours: colours.size, width, height };
      }),
    );
  }
  return found;
}

/** A text and how it stands out. */
export interface Contrast {
  readonly text: string;
  readonly ratio: number;
}

/**
 * The texts of tables and of words below the cells, with the contrast ratio between the computed colour of each and that of what lies
 * behind it. Source of the ratio: WCAG 2.2, "relative luminance" and "contrast ratio".
 */
export function contrasts(page: Page): Promise<Contrast[]> {
  return page.evaluate(() => {
    type Rgba = [number, number, number, number];
    // The canvas turns any notation of a colour into bytes.
    const pen = document.createElement("canvas").getContext("2d", { willReadFrequently: true })!;
    const bytes = (colour: string): Rgba => {
      pen.clearRect(0, 0, 1, 1);
      pen.fillStyle = colour;
      pen.fillRect(0, 0, 1, 1);
      const [r = 0, g = 0, b = 0, a = 0] = pen.getImageData(0, 0, 1, 1).data;
      return [r, g, b, a / 255];
    };
    const over = ([r, g, b, a]: Rgba, [R, G, B]: Rgba): Rgba => [
      a * r + (1 - a) * R,
      a * g + (1 - a) * G,
      a * b + (1 - a) * B,
      1,
    ];
    const behind = (element: Element | null): Rgba => {
      if (element === null) return [255, 255, 255, 1];
      const own = bytes(getComputedStyle(element).backgroundColor);
      return own[3] === 1 ? own : over(own, behind(element.parentElement));
    };
    const luminance = ([r, g, b]: Rgba): number => {
      const [x, y, z] = [r, g, b].map((value) => {
        const part = value / 255;
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
      }) as [number, number, number];
      return 0.2126 * x + 0.7152 * y + 0.0722 * z;
    };
    const texts = document.querySelectorAll(
      ".jp-OutputArea-output .jp-RenderedHTMLCommon :is(th, td, caption, p, li, h3), .jp-OutputArea-output.jp-RenderedHTMLCommon :is(th, td, caption, p, li, h3)",
    );
    return [...texts]
      .filter((element) => element.textContent.trim() !== "")
      .map((element) => {
        const ground = behind(element);
        const ink = over(bytes(getComputedStyle(element).color), ground);
        const [light, dark] = [luminance(ink), luminance(ground)].sort((a, b) => b - a) as [number, number];
        return { text: element.textContent.trim().slice(0, 40), ratio: (light + 0.05) / (dark + 0.05) };
      });
  });
}
