import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import type { FootOutline, FootPlace } from "./footOutline.js";
import { plantedOutlines } from "./plantedOutlines.js";
import { rounded } from "./rounded.js";
import type { TextLine } from "./TextLine.js";

/**
 * One tracing of an outline as rows of outlines.csv: a hand that wanders and jitters, a sheet that lies anyhow. Seen from below, so the outer
 * side of a right foot lies to the left; `outerLeft` says which side it lies on.
 */
export function tracedLines(
  outline: FootOutline,
  cells: TextLine["cells"],
  outerLeft: boolean,
  random: RandomSource,
): TextLine[] {
  const turn = random.normal(0, 0.1);
  const [dx, dy] = [random.normal(110, 8), random.normal(60, 8)];
  const row = (ring: "wall" | "frog", point: string | number, at: FootPlace): TextLine => {
    const x = outerLeft ? -at.x : at.x;
    const onPaper = { x: dx + x * Math.cos(turn) - at.y * Math.sin(turn), y: dy + x * Math.sin(turn) + at.y * Math.cos(turn) };
    return { cells: { ...cells, ring, point, x_mm: rounded(onPaper.x, 1), y_mm: rounded(onPaper.y, 1) } };
  };
  const landmark = ({ x, y }: FootPlace, along: "x" | "y") => {
    const off = random.normal(0, plantedOutlines.landmarkSdMm);
    return along === "x" ? { x: x + off, y } : { x, y: y + off };
  };
  return [
    ...shaky(outline.wall, random.stream("wall")).map((at, place) => row("wall", place + 1, at)),
    row("wall", "toe", landmark(outline.toe, "x")),
    row("wall", "heel_medial", landmark(outline.heelMedial, "y")),
    row("wall", "heel_lateral", landmark(outline.heelLateral, "y")),
    ...shaky(outline.frog, random.stream("frog")).map((at, place) => row("frog", place + 1, at)),
  ];
}

/** The ring moved in and out along the way from its middle: a slow wave of two and three turns, and a jitter of each point. */
function shaky(ring: readonly FootPlace[], random: RandomSource): FootPlace[] {
  const { wanderSdMm, jitterSdMm } = plantedOutlines;
  const waves = [2, 3].map((turns) => ({
    turns,
    height: random.normal(0, wanderSdMm),
    phase: 2 * Math.PI * random.uniform(),
  }));
  const middle = ring.reduce((sum, { y }) => sum + y, 0) / ring.length;
  return ring.map(({ x, y }, place) => {
    const angle = (2 * Math.PI * place) / ring.length;
    const wander = waves.reduce((sum, { turns, height, phase }) => sum + height * Math.sin(turns * angle + phase), 0);
    const out = wander + random.normal(0, jitterSdMm);
    const far = Math.hypot(x, y - middle) || 1;
    return { x: x + (out * x) / far, y: y + (out * (y - middle)) / far };
  });
}
