import { StudyError } from "../study/StudyError.js";

const SLOPE = 17.27;
const OFFSET_C = 237.3;

/**
 * Dew point of air, degrees C: the temperature to which it must cool before water settles from it.
 *
 * Method: the vapour pressure of saturated air, e(t) = 0.6108 exp(17.27 t / (t + 237.3)) kPa, set equal to that of the air,
 * e(temperature) × humidity / 100, and solved for t (the first constant drops out).
 *
 * Missing: null when either is null, and at a humidity of 0, where there is no vapour.
 *
 * Errors: `bad_humidity` outside 0 to 100; `bad_temperature` outside -90 to 60.
 *
 * Source: Allen RG, Pereira LS, Raes D, Smith M 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, equation 11 (a Magnus formula).
 */
export function dewPoint(temperatureC: number | null, humidityPct: number | null): number | null {
  if (temperatureC === null || humidityPct === null) return null;
  if (!(humidityPct >= 0 && humidityPct <= 100)) {
    throw new StudyError("bad_humidity", `A humidity of ${humidityPct} % makes no sense.`, "Give 0 to 100, or null for none.");
  }
  if (!(temperatureC >= -90 && temperatureC <= 60)) {
    throw new StudyError("bad_temperature", `An air temperature of ${temperatureC} makes no sense.`, "Give degrees Celsius.");
  }
  if (humidityPct === 0) return null;
  const exponent = Math.log(humidityPct / 100) + (SLOPE * temperatureC) / (temperatureC + OFFSET_C);
  return (OFFSET_C * exponent) / (SLOPE - exponent);
}
