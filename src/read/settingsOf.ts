import { defaultSettings } from "../study/defaultSettings.js";
import type { Settings } from "../study/Settings.js";
import type { IssueLog } from "./report/issueLog.js";
import { messages } from "./report/messages.js";
import type { StudyJson } from "./StudyJson.js";

const meaning = {
  ends_on_date: "ends_on_date (the 24 hours up to the morning of the date)",
  starts_on_date: "starts_on_date (the 24 hours from the morning of the date)",
  calendar_day: "calendar_day (midnight to midnight)",
} as const;

/**
 * The settings of a study: what `study.json` states, else the usual values. Which 24 hours a gauge day covers has no usual value that is safe to
 * take in silence: where there is weather, or the question was left open with null, a warning says which is used.
 *
 * @private
 */
export function settingsOf(json: StudyJson, hasWeather: boolean, log: IssueLog): Settings {
  const stated = Object.fromEntries(
    Object.entries(json.settings ?? {}).filter(([, value]) => value !== undefined),
  ) as Partial<Settings>;
  const gaugeDay = json.gaugeDay ?? stated.gaugeDay;
  const settings = { ...defaultSettings, ...stated, asOf: json.asOf ?? stated.asOf ?? null };
  if (gaugeDay !== undefined) return { ...settings, gaugeDay };
  if (hasWeather || json.gaugeDay === null) {
    log.add(messages.gaugeDayNotStated(meaning[settings.gaugeDay]), {
      file: "study.json",
      line: null,
      row: null,
      column: null,
      value: null,
    });
  }
  return settings;
}
