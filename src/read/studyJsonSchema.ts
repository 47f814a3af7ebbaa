import type { ZodType } from "zod";
import { dayNumber } from "../study/dayNumber.js";
import type { FilesMapping } from "./mapping/FileMapping.js";
import { filesSchema } from "./mapping/filesSchema.js";
import type { StudyJson } from "./StudyJson.js";
import type { Zod } from "./Zod.js";
import { settingRules } from "../study/settingRules.js";

const MOST_DAYS = 3660;
// For editors: a little laxer than the checks beside which they stand.
const DAY = "^\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])$";
const INSIDE = "^(?![/\\\\]|[A-Za-z]:)(?!(.*[/\\\\])?\\.\\.([/\\\\]|$)).*\\S";

/**
 * The schema of `study.json`: strict, so that a misspelt key is refused and not passed over. The part that maps files is large; given the keys that a text
 * `mentioned`, it is made for those only, which refuses and accepts the same texts. null: for all.
 *
 * @private
 */
export function studyJsonSchema(zod: Zod, mentioned: ReadonlySet<string> | null = null): ZodType<StudyJson> {
  const { z } = zod;
  const name = z.string().trim().min(1).max(200).meta({ pattern: "\\S" });
  const days = (least: number) => z.number().int().min(least).max(MOST_DAYS);
  const proportion = z.number().gt(0).lt(1);
  const gaugeDay = z.enum(["ends_on_date", "starts_on_date", "calendar_day"]);
  const date = z
    .string()
    .refine((text) => dayNumber(text) !== null, "a calendar day such as 2024-03-05 is expected")
    .meta({ pattern: DAY });
  const inside = (file: string) => !/^([/\\]|[a-z]:)|(^|[/\\])\.\.([/\\]|$)|\0/i.test(file);
  const file = name.refine(inside, "a file inside the study folder is expected").meta({ pattern: INSIDE });
  const settings = z.strictObject({
    caseGrade: z.literal([1, 2, 3]),
    level: proportion,
    gaugeDay,
    rainWindowsDays: z.array(days(1)).min(1),
    apiDecayPerDay: proportion,
    apiWarmUpDays: days(0),
    primaryExposure: z
      .string()
      .refine((text) => settingRules.primaryExposure.allows(text), settingRules.primaryExposure.expected),
    exposurePer: z.number().gt(0).lte(1000),
    adjustFor: z.array(
      z.enum(["season", "season_2", "end", "observer", "shod", "interval", "ground", "bedding", "turnout", "surface_treated"]),
    ),
    dailyRainLimitMm: z.number().gt(0).max(1825).nullable(),
    toleranceDays: days(0),
    lostAfterDays: days(1),
    minimumHorses: z.number().int().min(1),
    contractedFrogIndex: z.number().gt(0).max(10),
    underrunGapDeg: z.number().min(0).max(90),
    unevenPairDeg: z.number().min(0).max(90),
    asOf: date.nullable(),
  });
  const weatherFile = z
    .strictObject({
      file,
      format: z.enum(["ghcn-by-station", "ghcn-dly"]),
      gauge: name.optional(),
      stations: z.record(name, name).optional(),
    })
    .refine((named) => named.gauge === undefined || named.stations === undefined, "give gauge or stations, not both");
  const gauge = z.strictObject({
    gauge: name,
    latitudeDeg: z.number().min(-90).max(90),
    longitudeDeg: z.number().min(-180).max(180).optional(),
    elevationM: z.number().min(-500).max(9000).optional(),
  });
  const unnamed: ZodType<FilesMapping | undefined> = z.undefined().optional();
  const files = mentioned?.has("files") === false ? unnamed : filesSchema(zod, file, mentioned).optional();
  return z.strictObject({
    $schema: z.string().optional(),
    name,
    gaugeDay: gaugeDay.nullish(),
    asOf: date.nullish(),
    settings: settings.partial().optional(),
    files,
    weather: z.array(weatherFile).optional(),
    gauges: z
      .array(gauge)
      .refine((list) => new Set(list.map((entry) => entry.gauge)).size === list.length, "a gauge is named twice")
      .optional(),
    stationList: file.optional(),
  });
}
