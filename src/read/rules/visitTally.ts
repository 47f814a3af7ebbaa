import type { FlowCount, RecordFlow } from "../../study/DataReport.js";
import type { KnownHorses } from "./horseRule.js";

/** Counts visits, horses and yards that were read and that have an accepted row. */
export interface VisitTally {
  /** Notes a visit and returns its number, the same for the same horse and day. */
  readonly seen: (horseId: string, visitDate: string) => number;
  /** Notes a horse named in a row whose day is not known. */
  readonly seenHorse: (horseId: string) => void;
  /** Notes that a row of this visit was accepted. */
  readonly accepted: (visit: number) => void;
  /** The counts at every level, given those of the rows. */
  readonly flow: (footVisits: FlowCount, horses: KnownHorses | null) => RecordFlow;
}

/**
 * A tally of nothing yet. A visit is a horse and a day, a horse a name in a row, a yard one that horses.csv names for such a horse. Each
 * counts as accepted when at least one of its rows is; rows that could not be split into cells count as rows only.
 */
export function visitTally(): VisitTally {
  const horseNumbers = new Map<string, number>();
  const visitsOfDay = new Map<string, Map<number, number>>();
  const horseOfVisit: string[] = [];
  const isAccepted: boolean[] = [];
  const seenHorse = (horseId: string): number => {
    const known = horseNumbers.get(horseId);
    if (known !== undefined) return known;
    horseNumbers.set(horseId, horseNumbers.size);
    return horseNumbers.size - 1;
  };
  return {
    seenHorse,
    seen(horseId, visitDate) {
      const horse = seenHorse(horseId);
      let visits = visitsOfDay.get(visitDate);
      if (visits === undefined) visitsOfDay.set(visitDate, (visits = new Map<number, number>()));
      const known = visits.get(horse);
      if (known !== undefined) return known;
      const visit = horseOfVisit.push(horseId) - 1;
      isAccepted.push(false);
      visits.set(horse, visit);
      return visit;
    },
    accepted(visit) {
      isAccepted[visit] = true;
    },
    flow(footVisits, horses) {
      const horsesAccepted = horseOfVisit.filter((_, visit) => isAccepted[visit]);
      const acceptedHorses = new Set(horsesAccepted);
      const yards = (names: Iterable<string>) => new Set([...names].flatMap((name) => [...(horses?.yards.get(name) ?? [])])).size;
      return {
        footVisits,
        visits: count(horseOfVisit.length, horsesAccepted.length),
        horses: count(horseNumbers.size, acceptedHorses.size),
        yards: count(yards(horseNumbers.keys()), yards(acceptedHorses)),
      };
    },
  };
}

function count(read: number, accepted: number): FlowCount {
  return { read, accepted, setAside: read - accepted };
}
