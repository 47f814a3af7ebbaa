import { grouped } from "../study/grouped.js";
import type { OutlinePoint } from "../study/OutlinePoint.js";
import type { Study } from "../study/Study.js";
import { byVisit } from "./byVisit.js";
import { footEnd } from "./footEnd.js";
import { footSide } from "./footSide.js";
import { outlineFaults } from "./outlineFaults.js";
import type { PlanePoint } from "./PlanePoint.js";
import { ringArea } from "./ringArea.js";
import type { OutlineFault, TracedOutline } from "./TracedOutline.js";

/** How the outlines are to lie. */
export interface TracedOutlinesOptions {
  /** Turn left feet about, so that they lie as right ones and may be laid over them. */
  readonly mirrorLeft?: boolean;
  /** Move and turn each so that the middle of its heels lies at 0, 0 and its toe straight above. */
  readonly aligned?: boolean;
}

/**
 * Traced outlines of the ground surface, one for each tracing of a foot on a day at a stage, by day, horse, foot, stage and tracing; what is
 * wrong with one stands in its `faults`, and one with `usable` false is to be left out and counted.
 *
 * Method: numbered points in the order of their numbers, each ring run anticlockwise; landmarks by their names. A wall is not usable with
 * fewer than 20 points, when it crosses itself (the order is mixed up), without its three landmarks, or when heels and toe are less than
 * 30 or more than 280 mm apart; an unusable frog (fewer than 8 points, or crossing itself) is left empty. All feet are taken to be
 * traced from the same side, from above or from below; when more than two thirds of the sided outlines agree in that, the others get
 * the fault `other_hand`. A size, place or turn is not changed unless `aligned` is asked for, and then only place and turn.
 *
 * Missing: a frog that was not traced is empty; specimens are included, with no side; which of their heels is the inner one is then only a
 * name. An outline without all landmarks cannot be aligned and stays as it lies.
 *
 * Source: own.
 */
export function tracedOutlines(study: Pick<Study, "outlines">, options: TracedOutlinesOptions = {}): TracedOutline[] {
  const tracings = grouped(study.outlines, ({ horseId, visitDate, foot, stage, tracing }) =>
    [horseId, visitDate, foot, stage, tracing].join("\n"),
  );
  const outlines = [...tracings.values()].map((points) => outlineOf(points));
  const order = ({ foot, stage, tracing }: TracedOutline) => `${foot} ${stage ?? ""} ${tracing ?? ""}`;
  outlines.sort((a, b) => byVisit(a, b) || (order(a) < order(b) ? -1 : 1));
  const hand = usualHand(outlines);
  return outlines.map((outline) => laid(withHand(outline, hand), options));
}

function outlineOf(points: readonly OutlinePoint[]): TracedOutline {
  const { file, line, horseId, visitDate, foot, stage, tracing } = points[0]!;
  const observerId = points.find((point) => point.observerId !== null)?.observerId ?? null;
  const landmark = (name: string): PlanePoint | null => {
    const found = points.find(({ ring, point }) => ring === "wall" && point === name);
    return found === undefined ? null : { xMm: found.xMm, yMm: found.yMm };
  };
  const landmarks = { toe: landmark("toe"), heelMedial: landmark("heel_medial"), heelLateral: landmark("heel_lateral") };
  const rings = { wall: numbered(points, "wall"), frog: numbered(points, "frog") };
  const strange = points.filter(({ ring, point }) => !isNumber(point) && !(ring === "wall" && isLandmark(point)));
  const faults = outlineFaults(rings, landmarks, strange);
  const forbidden = (ring: "wall" | "frog") => faults.some((fault) => fault.ring === ring && fault.severity === "unusable");
  return {
    ...{ file, line, horseId, visitDate, foot, stage, tracing, observerId, end: footEnd(foot), side: footSide(foot) },
    wall: anticlockwise(rings.wall),
    frog: forbidden("frog") ? [] : anticlockwise(rings.frog),
    ...{ landmarks, mirrored: false, aligned: false, faults, usable: !forbidden("wall") },
  };
}

const isNumber = (point: string) => /^\d{1,9}$/.test(point);
const isLandmark = (point: string) => point === "toe" || point === "heel_medial" || point === "heel_lateral";

function numbered(points: readonly OutlinePoint[], name: "wall" | "frog"): (PlanePoint & { readonly number: number })[] {
  return points
    .filter(({ ring, point }) => ring === name && isNumber(point))
    .map(({ point, xMm, yMm }) => ({ number: Number(point), xMm, yMm }))
    .sort((a, b) => a.number - b.number);
}

function anticlockwise(ring: readonly PlanePoint[]): PlanePoint[] {
  const points = ring.map(({ xMm, yMm }) => ({ xMm, yMm }));
  return ringArea(points) < 0 ? points.reverse() : points;
}

/** On which hand the outer heel lies, seen towards the toe, turned about for left feet: 1 right, -1 left; null when it cannot be told. */
function handOf({ landmarks: { toe, heelMedial, heelLateral }, side }: TracedOutline): 1 | -1 | null {
  if (toe === null || heelMedial === null || heelLateral === null || side === null) return null;
  const across = [heelLateral.xMm - heelMedial.xMm, heelLateral.yMm - heelMedial.yMm] as const;
  const ahead = [toe.xMm - (heelLateral.xMm + heelMedial.xMm) / 2, toe.yMm - (heelLateral.yMm + heelMedial.yMm) / 2] as const;
  const turn = across[0] * ahead[1] - across[1] * ahead[0];
  if (turn === 0) return null;
  return turn > 0 === (side === "right") ? 1 : -1;
}

function usualHand(outlines: readonly TracedOutline[]): 1 | -1 | null {
  const hands = outlines.map(handOf).filter((hand) => hand !== null);
  const right = hands.filter((hand) => hand === 1).length;
  if (right * 3 > hands.length * 2) return 1;
  return (hands.length - right) * 3 > hands.length * 2 ? -1 : null;
}

function withHand(outline: TracedOutline, usual: 1 | -1 | null): TracedOutline {
  const hand = handOf(outline);
  if (usual === null || hand === null || hand === usual) return outline;
  const fault: OutlineFault = {
    ...{ code: "other_hand", ring: "wall", severity: "warning" },
    message: "It lies the other way round than most: its outer heel is where their inner heel is.",
    hint: "Look whether left and right, or the two heels, were taken for each other, or the picture is a mirror image.",
  };
  return { ...outline, faults: [...outline.faults, fault] };
}

function laid(outline: TracedOutline, { mirrorLeft = false, aligned = false }: TracedOutlinesOptions): TracedOutline {
  const { toe, heelMedial, heelLateral } = outline.landmarks;
  const mirrored = mirrorLeft && outline.side === "left";
  const turns = aligned && toe !== null && heelMedial !== null && heelLateral !== null;
  const frame = turns ? footFrame(toe, heelMedial, heelLateral) : (point: PlanePoint) => point;
  const move = (point: PlanePoint): PlanePoint => {
    const { xMm, yMm } = frame(point);
    return { xMm: mirrored ? -xMm : xMm, yMm };
  };
  const moved = (point: PlanePoint | null) => (point === null ? null : move(point));
  return {
    ...outline,
    wall: anticlockwise(outline.wall.map(move)),
    frog: anticlockwise(outline.frog.map(move)),
    landmarks: { toe: moved(toe), heelMedial: moved(heelMedial), heelLateral: moved(heelLateral) },
    ...{ mirrored, aligned: turns },
  };
}

function footFrame(toe: PlanePoint, heelMedial: PlanePoint, heelLateral: PlanePoint): (point: PlanePoint) => PlanePoint {
  const [x0, y0] = [(heelMedial.xMm + heelLateral.xMm) / 2, (heelMedial.yMm + heelLateral.yMm) / 2];
  const length = Math.hypot(toe.xMm - x0, toe.yMm - y0);
  const [ux, uy] = length === 0 ? [0, 1] : [(toe.xMm - x0) / length, (toe.yMm - y0) / length];
  return ({ xMm, yMm }) => ({
    xMm: (xMm - x0) * uy - (yMm - y0) * ux,
    yMm: (xMm - x0) * ux + (yMm - y0) * uy,
  });
}
