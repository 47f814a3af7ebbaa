import { StudyError } from "../study/StudyError.js";

/** Solar constant, MJ per square metre and minute. */
const SOLAR_CONSTANT = 0.082;

/**
 * Radiation of the sun on a level surface above the atmosphere, MJ per square metre and day.
 *
 * Method: (24 × 60 / π) × 0.0820 × d × (ω sin φ sin δ + cos φ cos δ sin ω), with d the inverse relative distance of the earth,
 * δ the declination of the sun and ω the sunset hour angle, arccos(-tan φ tan δ). Where the sun does not set ω is π, where it does not
 * rise 0, and so is the radiation.
 *
 * Errors: `bad_latitude` outside -90 to 90 degrees; `bad_day_of_year` outside 1 to 366.
 *
 * Source: Allen RG, Pereira LS, Raes D, Smith M 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, equations 21 to 25.
 */
export function extraterrestrialRadiation(latitudeDeg: number, dayOfYear: number): number {
  if (!(latitudeDeg >= -90 && latitudeDeg <= 90)) {
    throw new StudyError(
      "bad_latitude",
      `A latitude of ${latitudeDeg} makes no sense.`,
      "Give degrees, north positive, -90 to 90.",
    );
  }
  if (!(Number.isInteger(dayOfYear) && dayOfYear >= 1 && dayOfYear <= 366)) {
    throw new StudyError("bad_day_of_year", `There is no day ${dayOfYear} of a year.`, "Give a whole number from 1 to 366.");
  }
  const latitude = (latitudeDeg * Math.PI) / 180;
  const season = (2 * Math.PI * dayOfYear) / 365;
  const distance = 1 + 0.033 * Math.cos(season);
  const declination = 0.409 * Math.sin(season - 1.39);
  const sunset = Math.acos(Math.min(1, Math.max(-1, -Math.tan(latitude) * Math.tan(declination))));
  const height =
    sunset * Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset);
  return Math.max(0, ((24 * 60) / Math.PI) * SOLAR_CONSTANT * distance * height);
}
