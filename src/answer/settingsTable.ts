import { cellText } from "../chart/cellText.js";
import type { Table } from "../chart/Table.js";
import type { Settings } from "../study/Settings.js";

const gaugeDays: Readonly<Record<Settings["gaugeDay"], string>> = {
  ends_on_date: "the 24 hours up to the reading on its date",
  starts_on_date: "the 24 hours from the morning of its date",
  calendar_day: "its calendar day, midnight to midnight",
};

/** The choices an analysis rests on, in words. */
export function settingsTable(settings: Settings): Table {
  const rows: [string, string][] = [
    ["Thrush counts as a case from grade", String(settings.caseGrade)],
    ["Confidence level of intervals", cellText(settings.level, { percent: true })],
    ["A rain reading covers", gaugeDays[settings.gaugeDay]],
    ["Rain is totalled over the days before a visit", settings.rainWindowsDays.join(", ")],
    ["Share of past rain kept by the wetness index each day", String(settings.apiDecayPerDay)],
    ["Days of readings the wetness index needs", String(settings.apiWarmUpDays)],
    ["An interval is kept within days of its date", String(settings.toleranceDays)],
    ["A gap is loss of contact, not lateness, after days", String(settings.lostAfterDays)],
    ["Groups are estimated from horses", String(settings.minimumHorses)],
    ["A frog counts as contracted below width over length", String(settings.contractedFrogIndex)],
    ["Heels count as underrun from toe angle minus heel angle", `${settings.underrunGapDeg} degrees`],
    ["A pair counts as uneven above a difference in toe angle", `${settings.unevenPairDeg} degrees`],
    ["The review is made as of", settings.asOf ?? "the day of the last visit"],
  ];
  return {
    caption: "Settings",
    columns: [
      { name: "setting", title: "Setting" },
      { name: "value", title: "Value" },
    ],
    rows: rows.map(([setting, value]) => ({ setting, value })),
  };
}
