import type { ZodType } from "zod";
import { dayNumber } from "../study/dayNumber.js";
import type { StudyJson } from "./StudyJson.js";
import type { Zod } from "./Zod.js";

const MOST_DAYS = 3660;

/** The schema of `study.json`: strict, so that a misspelt key is refused and not passed over. */
export function studyJsonSchema({ z }: Zod): ZodType<StudyJson> {
  const name = z.string().trim().min(1).max(200);
  const days = (least: number) => z.number().int().min(least).max(MOST_DAYS);
  const proportion = z.number().gt(0).lt(1);
  const gaugeDay = z.enum(["ends_on_date", "starts_on_date", "calendar_day"]);
  const date = z.string().refine((text) => dayNumber(text) !== null, "a calendar day such as 2024-03-05 is expected");
  const inside = (file: string) => !/^([/\\]|[a-z]:)|(^|[/\\])\.\.([/\\]|$)|\0/i.test(file);
  const file = name.refine(inside, "a file inside the study folder is expected");
  const settings = z.strictObject({
    caseGrade: z.literal([1, 2, 3]),
    level: proportion,
    gaugeDay,
    rainWindowsDays: z.array(days(1)).min(1),
    apiDecayPerDay: proportion,
    apiWarmUpDays: days(0),
    toleranceDays: days(0),
    lostAfterDays: days(1),
    minimumHorses: z.number().int().min(1),
    contractedFrogIndex: z.number().gt(0).max(10),
    underrunGapDeg: z.number().min(0).max(90),
    unevenPairDeg: z.number().min(0).max(90),
    asOf: date.nullable(),
  });
  return z.strictObject({
    name,
    gaugeDay: gaugeDay.nullish(),
    asOf: date.nullish(),
    settings: settings.partial().optional(),
    weather: z.array(z.strictObject({ file, format: z.literal("ghcn-by-station"), gauge: name.optional() })).optional(),
  });
}
