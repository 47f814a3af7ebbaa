import { outlineFaults } from "../read/outlines/outlineFaults.js";
import { type TracingParts, tracingParts } from "../read/outlines/tracingParts.js";
import { grouped } from "../study/grouped.js";
import type { OutlineFault } from "../study/OutlineFault.js";
import type { OutlinePoint } from "../study/OutlinePoint.js";
import type { Study } from "../study/Study.js";
import { byVisit } from "./byVisit.js";
import { footEnd } from "./footEnd.js";
import { footSide } from "./footSide.js";
import type { PlanePoint } from "../study/PlanePoint.js";
import { ringArea } from "./ringArea.js";
import type { TracedOutline } from "./TracedOutline.js";

type Landmarks = NonNullable<TracedOutline["landmarks"]>;

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
 * fewer than 20 points or more than 5000, when it crosses itself (the order is mixed up) or comes back to a place, when it is open elsewhere than at the
 * heels, without its three landmarks, or when heels and toe are less than
 * 30 or more than 280 mm apart; an unusable frog (fewer than 8 points or more than 5000, or crossing itself) is left empty. All feet are taken to be
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
  const parts = tracingParts(points);
  const faults = outlineFaults(parts);
  const forbidden = (ring: "wall" | "frog") => faults.some((fault) => fault.ring === ring && fault.severity === "unusable");
  return {
    ...{ file, line, horseId, visitDate, foot, stage, tracing, observerId, end: footEnd(foot), side: footSide(foot) },
    wall: anticlockwise(parts.rings.wall),
    frog: forbidden("frog") ? [] : anticlockwise(parts.rings.frog),
    landmarks: allOf(parts.landmarks),
    ...{ mirrored: false, aligned: false, faults, usable: !forbidden("wall") },
  };
}

function allOf({ toe, heelMedial, heelLateral }: TracingParts["landmarks"]): Landmarks | null {
  return toe === null || heelMedial === null || heelLateral === null ? null : { toe, heelMedial, heelLateral };
}

function anticlockwise(ring: readonly PlanePoint[]): PlanePoint[] {
  const points = ring.map(({ x, y }) => ({ x, y }));
  return ringArea(points) < 0 ? points.reverse() : points;
}

/** On which hand the outer heel lies, seen towards the toe, turned about for left feet: 1 right, -1 left; null when it cannot be told. */
function handOf({ landmarks, side }: TracedOutline): 1 | -1 | null {
  if (landmarks === null || side === null) return null;
  const { toe, heelMedial, heelLateral } = landmarks;
  const [acrossX, acrossY] = [heelLateral.x - heelMedial.x, heelLateral.y - heelMedial.y];
  const [aheadX, aheadY] = [toe.x - (heelLateral.x + heelMedial.x) / 2, toe.y - (heelLateral.y + heelMedial.y) / 2];
  const turn = acrossX * aheadY - acrossY * aheadX;
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
  const { landmarks } = outline;
  const mirrored = mirrorLeft && outline.side === "left";
  const turned = aligned && landmarks !== null;
  const frame = turned ? footFrame(landmarks) : (point: PlanePoint) => point;
  const move = (point: PlanePoint): PlanePoint => {
    const { x, y } = frame(point);
    return { x: mirrored ? 0 - x : x, y };
  };
  return {
    ...outline,
    wall: anticlockwise(outline.wall.map(move)),
    frog: anticlockwise(outline.frog.map(move)),
    landmarks:
      landmarks === null
        ? null
        : { toe: move(landmarks.toe), heelMedial: move(landmarks.heelMedial), heelLateral: move(landmarks.heelLateral) },
    ...{ mirrored, aligned: turned },
  };
}

function footFrame({ toe, heelMedial, heelLateral }: Landmarks): (point: PlanePoint) => PlanePoint {
  const [x0, y0] = [(heelMedial.x + heelLateral.x) / 2, (heelMedial.y + heelLateral.y) / 2];
  const length = Math.hypot(toe.x - x0, toe.y - y0);
  const [ux, uy] = length === 0 ? [0, 1] : [(toe.x - x0) / length, (toe.y - y0) / length];
  return ({ x, y }) => ({ x: (x - x0) * uy - (y - y0) * ux, y: (x - x0) * ux + (y - y0) * uy });
}
