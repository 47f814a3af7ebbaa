import { Resvg } from "@resvg/resvg-js";
import { expect, test } from "vitest";
import { intervalKeepingChart } from "../../src/chart/intervalKeepingChart.js";
import { toPng } from "../../src/show/toPng.js";
import { toSvg } from "../../src/show/toSvg.js";
import { keepingOptions, yards } from "../chart/charts.js";

const chart = intervalKeepingChart(yards, { ...keepingOptions, title: "Late most often at one yard" });

/** Width and height from the IHDR chunk (PNG specification, second edition, 11.2.2). */
function size(png: Uint8Array): [number, number] {
  const view = new DataView(png.buffer, png.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
}

test("is a PNG of twice the size at which it is shown, unless told otherwise", async () => {
  const { png, width, height } = await toPng(chart);
  expect([...png.slice(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  expect(size(png)).toEqual([2 * width, 2 * height]);
  expect(size((await toPng(chart, { scale: 1 })).png)).toEqual([width, height]);
});

test("the same chart gives the same picture; another title gives another one, so letters are drawn", async () => {
  const first = Buffer.from((await toPng(chart)).png);
  expect(first.equals((await toPng(chart)).png)).toBe(true);
  const renamed = intervalKeepingChart(yards, { ...keepingOptions, title: "Late most often at two yards" });
  expect(first.equals((await toPng(renamed)).png)).toBe(false);
});

test("the paper is light and opaque, with ink on it", async () => {
  const { png } = await toPng(chart, { scale: 1 });
  const wrapped = `<svg xmlns="http://www.w3.org/2000/svg" width="${size(png)[0]}" height="${size(png)[1]}"><image href="data:image/png;base64,${Buffer.from(png).toString("base64")}" width="100%" height="100%"/></svg>`;
  const pixels = new Resvg(wrapped).render().pixels;
  let [dark, clear] = [0, 0];
  for (let at = 0; at < pixels.length; at += 4) {
    if (pixels[at]! + pixels[at + 1]! + pixels[at + 2]! < 200) dark++;
    if (pixels[at + 3]! < 255) clear++;
  }
  expect([...pixels.subarray(0, 4)]).toEqual([255, 255, 255, 255]);
  expect(clear).toBe(0);
  // The title alone is some hundreds of pixels of ink.
  expect(dark).toBeGreaterThan(500);
});

test("the drawing asks for the font that is shipped", async () => {
  expect(await toSvg(chart)).toContain(`font-family="'Source Sans 3',`);
});
