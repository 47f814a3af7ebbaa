import type { FlowCount, RecordFlow } from "../../study/DataReport.js";
import type { KnownHorses } from "./horseRule.js";

/** Counts visits, horses and yards that were read and that have an accepted row. */
export interface VisitTally {
  /** Notes a visit and returns its number, the same for the same horse and day. */
  readonly seen: (horseId: string, day: number) => number;
  /** Notes a horse named in a row whose day is not known. */
  readonly seenHorse: (horseId: string) => void;
  /** Notes that a row of this visit was accepted. */
  readonly accepted: (visit: number) => void;
  /** The counts at every level, given those of the rows. */
  readonly flow: (footVisits: FlowCount, horses: KnownHorses | null) => RecordFlow;
}

// Days of the years 1000 to 9999 lie within this many of 1970.
const MOST_DAYS = 4_000_000;

/**
 * A tally of nothing yet. A visit is a horse and a day, a horse a name in a row, a yard one that horses.csv names for such a horse. Each
 * counts as accepted when at least one of its rows is; rows that could not be split into cells count as rows only.
 */
export function visitTally(): VisitTally {
  const horseNumbers = new Map<string, number>();
  const visitNumbers = new Map<number, number>();
  const horseOfVisit: string[] = [];
  const acceptedVisits = new Set<number>();
  const seenHorse = (horseId: string): number => {
    const known = horseNumbers.get(horseId);
    if (known !== undefined) return known;
    horseNumbers.set(horseId, horseNumbers.size);
    return horseNumbers.size - 1;
  };
  return {
    seenHorse,
    seen(horseId, day) {
      const key = seenHorse(horseId) * 2 * MOST_DAYS + day + MOST_DAYS;
      const known = visitNumbers.get(key);
      if (known !== undefined) return known;
      const visit = horseOfVisit.push(horseId) - 1;
      visitNumbers.set(key, visit);
      return visit;
    },
    accepted(visit) {
      acceptedVisits.add(visit);
    },
    flow(footVisits, horses) {
      const acceptedHorses = new Set([...acceptedVisits].map((visit) => horseOfVisit[visit] ?? ""));
      const yards = (names: Iterable<string>) => new Set([...names].flatMap((name) => [...(horses?.yards.get(name) ?? [])])).size;
      return {
        footVisits,
        visits: count(horseOfVisit.length, acceptedVisits.size),
        horses: count(horseNumbers.size, acceptedHorses.size),
        yards: count(yards(horseNumbers.keys()), yards(acceptedHorses)),
      };
    },
  };
}

function count(read: number, accepted: number): FlowCount {
  return { read, accepted, setAside: read - accepted };
}
