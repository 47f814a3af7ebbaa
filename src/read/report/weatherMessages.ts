import { did } from "./did.js";
import { quoted } from "./quoted.js";
import { severities } from "./severities.js";

const { setAside, blanked, warning } = severities;

/** What may be wrong with readings of the weather and with what is said of their gauges; part of `messages`. */
export const weatherMessages = {
  traceWithRain: (rain: number) =>
    blanked(
      "trace_with_rain",
      `the reading is a trace and yet ${rain} mm; it counts as a trace, 0 mm`,
      "Correct the rain or the flag.",
    ),
  missingWithRain: (rain: number) =>
    blanked(
      "missing_with_rain",
      `the reading is marked missing and yet ${rain} mm; it counts as missing`,
      "Correct the rain or the flag.",
    ),
  accumulated: (rain: string) =>
    blanked(
      "accumulated_rain",
      `${rain} mm is the total of several days; it is used for none of them`,
      "Nothing to mend; give daily readings if there are any.",
    ),
  accumulatedAround: () =>
    blanked("accumulated_rain", "the day lies in a total of several days; its own reading is not used", "Nothing to mend."),
  temperaturesCrossed: () =>
    blanked("temperatures_crossed", "temp_min_c is above temp_max_c; both count as empty", "Correct the two temperatures."),

  ghcnRow: (found: string) =>
    setAside(
      "bad_ghcn_row",
      found,
      "A row is station, yyyymmdd, element, value, three flags and the time of observation, with no header.",
    ),
  ghcnQuality: (element: string, value: string, flag: string) =>
    setAside(
      "quality_flag",
      `${element} ${value} failed the quality check ${quoted(flag)} of its source`,
      "Nothing to mend; the reading counts as missing.",
    ),
  ghcnQualityOfDay: (element: string, date: string, value: string, flag: string) =>
    blanked(
      "quality_flag",
      `${element} ${value} of ${date} failed the quality check ${quoted(flag)} of its source`,
      "Nothing to mend; the reading counts as missing.",
    ),
  ghcnPresumedZero: () =>
    blanked(
      "presumed_zero",
      "the rain is missing and only presumed to be zero (flag P); it counts as missing",
      "Nothing to mend.",
    ),
  ghcnMissing: (element: string) => blanked("missing_code", `${element} is -9999, a missing reading`, "Nothing to mend."),
  ghcnUnused: (element: string, count: number) =>
    warning(
      "element_not_used",
      `${count} readings of ${quoted(element)} are of no use here and were passed over`,
      "Nothing to mend.",
    ),
  ghcnDaysUnknown: () =>
    warning(
      "accumulated_days_unknown",
      "a total of several days (MDPR) has no DAPR that says how many",
      "Only its last day is known to be covered; check the days before.",
    ),
  dlyLine: (found: string) =>
    setAside(
      "bad_ghcn_row",
      `the line does not keep to its fixed columns: ${found}`,
      "Take the line anew from its source: no character may be added, lost or turned into a tab.",
    ),
  ghcnStationsUnused: (stations: number, readings: number) =>
    warning(
      "station_not_used",
      `${readings} readings of ${stations === 1 ? "a station" : `${stations} stations`} not named in study.json were passed over`,
      'Nothing to mend; name a station under "stations" to use it.',
    ),
  ghcnStationAbsent: (station: string, nearest: string | null) =>
    warning(
      "station_without_readings",
      `study.json names the station ${quoted(station)}, of which the file has no reading that can be used`,
      `Check the identifier.${did(nearest)}`,
    ),
  stationLine: (found: string) =>
    setAside(
      "bad_station_line",
      `the line does not keep to its fixed columns: ${found}`,
      "Take the list anew from its source; it is cut by position, not by commas.",
    ),
  stationNotListed: (station: string) =>
    warning(
      "station_not_listed",
      `the station ${quoted(station)} is not in the list, so that where it stands is not known`,
      'Take a newer list, or give its latitude under "gauges" in study.json.',
    ),
  gaugeWithoutReadings: (gauge: string, nearest: string | null) =>
    warning(
      "gauge_without_readings",
      `gauges names ${quoted(gauge)}, of which there are no readings`,
      `Correct the spelling or take it out.${did(nearest)}`,
    ),
  rainOverLimit: (rain: number, limit: number) =>
    warning(
      "rain_over_limit",
      `${rain} mm is more than the ${limit} mm a day that study.json believes of this place; it was kept`,
      "Check the reading, its unit and whether it is the total of several days.",
    ),
  gaugeDayNotStated: (used: string) =>
    warning(
      "gauge_day_not_stated",
      `gaugeDay is not stated, so ${used} is used`,
      'Ask the keeper of the gauge which 24 hours a dated reading covers and write "ends_on_date", "starts_on_date" or "calendar_day".',
    ),
};
