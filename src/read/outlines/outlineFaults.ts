import type { OutlineFault } from "../../study/OutlineFault.js";
import type { OutlinePoint } from "../../study/OutlinePoint.js";
import type { PlanePoint } from "../../study/PlanePoint.js";
import { ringCrossing } from "./ringCrossing.js";
import type { NumberedPoint, TracingParts } from "./tracingParts.js";

type Ring = OutlinePoint["ring"];

/** Fewest points with which a ring is more than a sketch. */
const FEWEST: Readonly<Record<Ring, number>> = { wall: 20, frog: 8 };
/** Most points of a ring: more than a tenth of a millimetre of a large foot could need; every step is held against every other. */
const MOST = 5000;
/** Believable distance from the heels to the toe, mm: the hard range of hoof length. */
const LENGTHS = [30, 280] as const;
const OFF_WALL_MM = 10;
/** How near to a heel an open wall must end. */
const END_AT_HEEL_MM = 20;
/** A step between following points longer than this share of the whole way round. */
const LONG_STEP = 1 / 6;

/** What is wrong with the rings and landmarks of one tracing, apart from what only its neighbours could tell. @private */
export function outlineFaults({ rings, landmarks, strange }: TracingParts): OutlineFault[] {
  const unknown = strange.map(({ ring, point }): OutlineFault => ({
    ...{ code: "unknown_point", ring, severity: "warning" },
    message: `The point "${point}" is neither a number nor a landmark and was left out.`,
    hint: "Number the points 1, 2, 3 … and call the landmarks toe, heel_medial and heel_lateral.",
  }));
  return [
    ...unknown,
    ...ringFaults("wall", rings.wall),
    ...ringFaults("frog", rings.frog),
    ...landmarkFaults(rings.wall, landmarks),
    ...openFault(rings.wall, landmarks),
  ];
}

function ringFaults(name: Ring, ring: readonly NumberedPoint[]): OutlineFault[] {
  if (ring.length === 0) {
    const message = "The wall was not traced.";
    const hint = "Give the points of the wall with wall in the column ring.";
    return name === "frog" ? [] : [{ code: "no_wall", ring: name, severity: "unusable", message, hint }];
  }
  if (ring.length < FEWEST[name]) {
    const message = `The ${name} has ${ring.length} points; ${FEWEST[name]} are the fewest that can be used.`;
    return [{ code: "too_few_points", ring: name, severity: "unusable", message, hint: "Trace it again with more points." }];
  }
  if (ring.length > MOST) {
    const message = `The ${name} has ${ring.length} points; ${MOST} are the most that can be used.`;
    return [{ code: "too_many_points", ring: name, severity: "unusable", message, hint: "Keep every so many points of it." }];
  }
  const crossing = ringCrossing(ring);
  if (crossing !== null) {
    const [first, second] = crossing.map((place) => ring[place]?.number ?? 0);
    return [
      {
        ...{ code: "crossing", ring: name, severity: "unusable" },
        message: `The ${name} crosses itself after the points ${first} and ${second}.`,
        hint: "Number the points in the order in which they follow each other around the foot.",
      },
    ];
  }
  const repeated = repeatedPlace(ring);
  if (repeated !== null) {
    const [first, second] = repeated.map((place) => ring[place]?.number ?? 0);
    return [
      {
        ...{ code: "repeated_place", ring: name, severity: "unusable" },
        message: `The ${name} comes back at point ${second} to the place of point ${first}.`,
        hint: "Look for a point that was taken twice, or a way round that was traced twice.",
      },
    ];
  }
  return longSteps(name, ring);
}

/** Places in the ring of two points that lie on one place with others between them; a point repeated at once, or at the end, is harmless. */
function repeatedPlace(ring: readonly NumberedPoint[]): readonly [number, number] | null {
  const seen = new Map<string, number>();
  const last = ring.length - 1;
  for (const [place, { x, y }] of ring.entries()) {
    const key = `${x} ${y}`;
    const before = seen.get(key);
    seen.set(key, place);
    if (before === undefined || place - before === 1 || (before === 0 && place === last)) continue;
    return [before, place];
  }
  return null;
}

/** A wall may end at the heels, wherever else it ends a piece is missing. */
function openFault(wall: readonly NumberedPoint[], { heelMedial, heelLateral }: TracingParts["landmarks"]): OutlineFault[] {
  const [first, last] = [wall[0], wall.at(-1)];
  if (first === undefined || last === undefined || wall.length < FEWEST.wall) return [];
  const gap = distance(first, last);
  const around = stepsOf(wall).reduce((sum, { lengthMm }) => sum + lengthMm, gap);
  if (gap <= around * LONG_STEP) return [];
  const atHeel = (point: PlanePoint) =>
    [heelMedial, heelLateral].some((heel) => heel !== null && distance(point, heel) <= END_AT_HEEL_MM);
  if (atHeel(first) && atHeel(last)) return [];
  return [
    {
      ...{ code: "open", ring: "wall", severity: "unusable" },
      message: `The wall ends ${gap.toFixed(0)} mm from where it began, and not at the heels.`,
      hint: "Trace it once all the way round, or from one heel to the other.",
    },
  ];
}

/** The step that closes the ring is left out: a wall may be traced from heel to heel. */
function longSteps(name: Ring, ring: readonly NumberedPoint[]): OutlineFault[] {
  const steps = stepsOf(ring);
  const [first, last] = [ring[0], ring.at(-1)];
  const closing = first === undefined || last === undefined ? 0 : distance(first, last);
  const around = steps.reduce((sum, { lengthMm }) => sum + lengthMm, closing);
  return steps.flatMap(({ from, to, lengthMm }): OutlineFault[] => {
    if (lengthMm <= around * LONG_STEP) return [];
    return [
      {
        ...{ code: "long_step", ring: name, severity: "warning" },
        message: `From point ${from} to point ${to} of the ${name} it is ${lengthMm.toFixed(0)} mm.`,
        hint: "A stretch may be missing: look at the tracing.",
      },
    ];
  });
}

/** The steps from each point to the next, without the one that closes the ring. */
function stepsOf(ring: readonly NumberedPoint[]): { readonly from: number; readonly to: number; readonly lengthMm: number }[] {
  return ring.slice(1).map((to, place) => {
    const from = ring[place] ?? to;
    return { from: from.number, to: to.number, lengthMm: distance(from, to) };
  });
}

function landmarkFaults(wall: readonly NumberedPoint[], landmarks: TracingParts["landmarks"]): OutlineFault[] {
  const { toe, heelMedial, heelLateral } = landmarks;
  const named = [
    ["toe", toe],
    ["heel_medial", heelMedial],
    ["heel_lateral", heelLateral],
  ] as const;
  const faults = named.flatMap(([name, point]): OutlineFault[] => {
    if (point === null) {
      const message = `The landmark ${name} is missing.`;
      const hint = `Give a row with ring wall and point ${name}; without it the outline cannot be laid over others.`;
      return [{ code: "missing_landmark", ring: "wall", severity: "unusable", message, hint }];
    }
    const off = wall.length < 2 ? 0 : distanceToRing(point, wall);
    if (off <= OFF_WALL_MM) return [];
    const message = `The landmark ${name} lies ${off.toFixed(0)} mm off the wall.`;
    return [{ code: "landmark_off_wall", ring: "wall", severity: "warning", message, hint: "Look at the tracing." }];
  });
  if (toe === null || heelMedial === null || heelLateral === null) return faults;
  const lengthMm = distance(toe, { x: (heelMedial.x + heelLateral.x) / 2, y: (heelMedial.y + heelLateral.y) / 2 });
  if (lengthMm >= LENGTHS[0] && lengthMm <= LENGTHS[1]) return faults;
  return [
    ...faults,
    {
      ...{ code: "unlikely_size", ring: "wall", severity: "unusable" },
      message: `From the heels to the toe it is ${Number(lengthMm.toPrecision(3))} mm.`,
      hint: "Points are in millimetres: multiply centimetres by 10 and inches by 25.4.",
    },
  ];
}

function distanceToRing(point: PlanePoint, ring: readonly PlanePoint[]): number {
  return Math.min(...ring.map((from, place) => distanceToStep(point, from, ring[(place + 1) % ring.length] ?? from)));
}

function distanceToStep(point: PlanePoint, from: PlanePoint, to: PlanePoint): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy || 1);
  const share = Math.min(1, Math.max(0, along));
  return distance(point, { x: from.x + share * dx, y: from.y + share * dy });
}

function distance(a: PlanePoint, b: PlanePoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
