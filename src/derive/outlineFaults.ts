import type { OutlinePoint } from "../study/OutlinePoint.js";
import type { PlanePoint } from "./PlanePoint.js";
import { ringCrossing } from "./ringCrossing.js";
import type { OutlineFault } from "./TracedOutline.js";

type Ring = OutlinePoint["ring"];
type Numbered = PlanePoint & { readonly number: number };

/** The landmarks that were found, in the order in which they are looked for. */
interface Landmarks {
  readonly toe: PlanePoint | null;
  readonly heelMedial: PlanePoint | null;
  readonly heelLateral: PlanePoint | null;
}

/** Fewest points with which a ring is more than a sketch. */
const FEWEST: Readonly<Record<Ring, number>> = { wall: 20, frog: 8 };
/** Believable distance from the heels to the toe, mm: the hard range of hoof length. */
const LENGTHS = [30, 280] as const;
const OFF_WALL_MM = 10;
/** A step between following points longer than this share of the whole way round. */
const LONG_STEP = 1 / 6;

/** What is wrong with the rings and landmarks of one tracing, apart from what only its neighbours could tell. @private */
export function outlineFaults(
  rings: Readonly<Record<Ring, readonly Numbered[]>>,
  landmarks: Landmarks,
  strangePoints: readonly Pick<OutlinePoint, "ring" | "point">[],
): OutlineFault[] {
  const strange = strangePoints.map(({ ring, point }): OutlineFault => ({
    ...{ code: "unknown_point", ring, severity: "warning" },
    message: `The point "${point}" is neither a number nor a landmark and was left out.`,
    hint: "Number the points 1, 2, 3 … and call the landmarks toe, heel_medial and heel_lateral.",
  }));
  return [
    ...strange,
    ...ringFaults("wall", rings.wall),
    ...ringFaults("frog", rings.frog),
    ...landmarkFaults(rings.wall, landmarks),
  ];
}

function ringFaults(name: Ring, ring: readonly Numbered[]): OutlineFault[] {
  if (ring.length === 0) {
    const message = "The wall was not traced.";
    const hint = "Give the points of the wall with wall in the column ring.";
    return name === "frog" ? [] : [{ code: "no_wall", ring: name, severity: "unusable", message, hint }];
  }
  if (ring.length < FEWEST[name]) {
    const message = `The ${name} has ${ring.length} points; ${FEWEST[name]} are the fewest that can be used.`;
    return [{ code: "too_few_points", ring: name, severity: "unusable", message, hint: "Trace it again with more points." }];
  }
  const crossing = ringCrossing(ring);
  if (crossing !== null) {
    const [first, second] = crossing.map((place) => ring[place]!.number);
    return [
      {
        ...{ code: "crossing", ring: name, severity: "unusable" },
        message: `The ${name} crosses itself after the points ${first} and ${second}.`,
        hint: "Number the points in the order in which they follow each other around the foot.",
      },
    ];
  }
  return longSteps(name, ring);
}

/** The step that closes the ring is left out: a wall may be traced from heel to heel. */
function longSteps(name: Ring, ring: readonly Numbered[]): OutlineFault[] {
  const steps = ring.slice(1).map((point, place) => distance(ring[place]!, point));
  const around = steps.reduce((sum, step) => sum + step, 0) + distance(ring.at(-1)!, ring[0]!);
  return steps.flatMap((step, place): OutlineFault[] => {
    if (step <= around * LONG_STEP) return [];
    return [
      {
        ...{ code: "long_step", ring: name, severity: "warning" },
        message: `From point ${ring[place]!.number} to point ${ring[place + 1]!.number} of the ${name} it is ${step.toFixed(0)} mm.`,
        hint: "A stretch may be missing: look at the tracing.",
      },
    ];
  });
}

function landmarkFaults(wall: readonly Numbered[], landmarks: Landmarks): OutlineFault[] {
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
  return Math.min(...ring.map((from, place) => distanceToStep(point, from, ring[(place + 1) % ring.length]!)));
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
