import type { FlowCount, InputFile } from "../../study/DataReport.js";
import type { FootVisit } from "../../study/FootVisit.js";
import { grouped } from "../../study/grouped.js";
import type { HorseStay } from "../../study/HorseStay.js";
import type { Issue } from "../../study/Issue.js";
import type { Source } from "../../study/Source.js";
import type { Study } from "../../study/Study.js";
import { withIssues } from "../report/withIssues.js";

/**
 * The study without some accepted rows of visits, horses and outlines: they count as set aside, for the reasons in `issues`, in the report and
 * in the flow of records at every level, which still adds up. The study given is not changed. A yard stays accepted when any of its horses
 * does.
 */
export function withoutRows(study: Study, rows: ReadonlyMap<Source, unknown>, issues: readonly Issue[]): Study {
  if (rows.size === 0) return withIssues(study, issues);
  const kept = <Row extends Source>(table: readonly Row[]) => table.filter((row) => !rows.has(row));
  const visits = kept(study.visits);
  const { flow, inputs } = study.report;
  const goneFrom = grouped(
    [...study.visits, ...study.horses, ...study.outlines].filter((row) => rows.has(row)),
    ({ file }) => file,
  );
  const yardsLost = yardsOf(study.visits, study.horses) - yardsOf(visits, study.horses);
  const report = {
    ...study.report,
    inputs: inputs.map((input): InputFile => {
      const gone = goneFrom.get(input.file)?.length ?? 0;
      return { ...input, ...accepted({ ...input, read: input.rowsRead }, input.accepted - gone) };
    }),
    flow: {
      footVisits: flowOf(flow.footVisits, flow.footVisits.accepted - (study.visits.length - visits.length)),
      visits: flowOf(flow.visits, flow.visits.accepted - (visitsIn(study.visits) - visitsIn(visits))),
      horses: flowOf(flow.horses, flow.horses.accepted - (horsesIn(study.visits) - horsesIn(visits))),
      yards: flowOf(flow.yards, flow.yards.accepted - yardsLost),
    },
  };
  return withIssues({ ...study, visits, horses: kept(study.horses), outlines: kept(study.outlines), report }, issues);
}

function accepted({ read }: { readonly read: number }, left: number) {
  return { accepted: left, setAside: read - left };
}

function flowOf(count: FlowCount, left: number): FlowCount {
  return { read: count.read, ...accepted(count, left) };
}

function visitsIn(visits: readonly FootVisit[]): number {
  return new Set(visits.map(({ horseId, visitDate }) => `${horseId}\n${visitDate}`)).size;
}

function horsesIn(visits: readonly FootVisit[]): number {
  return new Set(visits.map(({ horseId }) => horseId)).size;
}

function yardsOf(visits: readonly FootVisit[], horses: readonly HorseStay[]): number {
  const named = new Set(visits.map(({ horseId }) => horseId));
  return new Set(horses.flatMap(({ horseId, yardId }) => (yardId !== null && named.has(horseId) ? [yardId] : []))).size;
}
