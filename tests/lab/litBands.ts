import type { Locator } from "playwright-core";

/**
 * Where a live chart of months is lit, as heights in px of the runs of lit rows, from top to bottom: one run a panel. Lit is sky blue at a
 * quarter over white paper.
 */
export function litBands(chart: Locator): Promise<number[]> {
  return chart.locator("canvas").evaluate((element) => {
    const canvas = element as HTMLCanvasElement;
    const { width, height } = canvas;
    const { data } = canvas.getContext("2d")!.getImageData(0, 0, width, height);
    const near = (at: number, wanted: number) => Math.abs(data[at]! - wanted) <= 2;
    const runs: number[] = [];
    let gap = Infinity;
    for (let row = 0; row < height; row += 1) {
      let lit = 0;
      for (let column = 0; column < width; column += 1) {
        const at = 4 * (row * width + column);
        if (near(at, 213) && near(at + 1, 236) && near(at + 2, 250)) lit += 1;
      }
      gap = lit > 3 ? gap : gap + 1;
      if (lit <= 3) continue;
      // A grid line across the band is no gap.
      if (gap > 5) runs.push(0);
      runs[runs.length - 1]! += 1 + (gap > 5 ? 0 : gap);
      gap = 0;
    }
    return runs.filter((run) => run > 20);
  });
}
