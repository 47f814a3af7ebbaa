import { cellText } from "../chart/cellText.js";
import type { Table } from "../chart/Table.js";
import type { Settings } from "../study/Settings.js";
import { daysInWords } from "./words/daysInWords.js";
import { counted } from "./words/counted.js";
import { levelText } from "../chart/parts/levelText.js";

const gaugeDays: Readonly<Record<Settings["gaugeDay"], string>> = {
  ends_on_date: "the 24 hours up to the reading on its date",
  starts_on_date: "the 24 hours from the morning of its date",
  calendar_day: "its calendar day, midnight to midnight",
};

/** The choices an analysis rests on, in words; all of them, or those named. */
export function settingsTable(settings: Settings, only?: readonly (keyof Settings)[]): Table {
  const rows: [keyof Settings, string, string][] = [
    ["caseGrade", "Thrush counts as a case from grade", String(settings.caseGrade)],
    ["level", "Confidence level of intervals", levelText(settings.level)],
    ["gaugeDay", "A rain reading covers", gaugeDays[settings.gaugeDay]],
    ["rainWindowsDays", "Rain before a visit is totalled over", daysInWords(...settings.rainWindowsDays)],
    [
      "apiDecayPerDay",
      "The wetness index keeps, each day, of what was there",
      cellText(settings.apiDecayPerDay, { percent: true }),
    ],
    ["apiWarmUpDays", "The wetness index needs readings of", `${daysInWords(settings.apiWarmUpDays)} without a gap`],
    [
      "dailyRainLimitMm",
      "Daily rain is doubted above",
      settings.dailyRainLimitMm === null ? "no limit set" : `${settings.dailyRainLimitMm} mm`,
    ],
    ["primaryExposure", "The declared exposure of the climate study", settings.primaryExposure],
    ["exposurePer", "Its effect is given for", `${settings.exposurePer} ${settings.exposurePer === 1 ? "unit" : "units"}`],
    ["adjustFor", "Its effect is held equal for", settings.adjustFor.join(", ") || "nothing"],
    ["toleranceDays", "An interval counts as kept within", `${daysInWords(settings.toleranceDays)} of its date, either way`],
    ["lostAfterDays", "A gap is loss of contact, not lateness, after", daysInWords(settings.lostAfterDays)],
    ["minimumHorses", "A group gets an estimate from", counted(settings.minimumHorses, "horse")],
    ["contractedFrogIndex", "A frog counts as contracted below a width over length of", String(settings.contractedFrogIndex)],
    [
      "underrunGapDeg",
      "Heels count as underrun from a toe angle less heel angle of",
      `${settings.underrunGapDeg} ${settings.underrunGapDeg === 1 ? "degree" : "degrees"}`,
    ],
    [
      "unevenPairDeg",
      "A pair counts as uneven above a difference in toe angle of",
      `${settings.unevenPairDeg} ${settings.unevenPairDeg === 1 ? "degree" : "degrees"}`,
    ],
    ["asOf", "The review is made as of", settings.asOf ?? "the day of the last visit"],
  ];
  return {
    caption: "Settings",
    columns: [
      { name: "setting", title: "Setting" },
      { name: "value", title: "Value" },
    ],
    rows: rows.filter(([name]) => only?.includes(name) ?? true).map(([, setting, value]) => ({ setting, value })),
  };
}
