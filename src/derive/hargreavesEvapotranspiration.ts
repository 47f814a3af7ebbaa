import { StudyError } from "../study/StudyError.js";
import { extraterrestrialRadiation } from "./extraterrestrialRadiation.js";
import { requiredDay } from "./requiredDay.js";

/** What `hargreavesEvapotranspiration` needs of a day. */
export interface HargreavesDay {
  /** Lowest and highest air temperature, degrees C. */
  readonly tMinC: number | null;
  readonly tMaxC: number | null;
  /** Degrees north of the equator, south negative. */
  readonly latitudeDeg: number;
  /** `YYYY-MM-DD`. */
  readonly date: string;
}

/** Millimetres of water that a megajoule per square metre turns into vapour. */
const MM_PER_MJ = 0.408;

/**
 * Reference evapotranspiration of one day, mm: the water that well-watered short grass would give off, from temperature alone.
 *
 * Method: 0.0023 × (mean + 17.8) × √(highest - lowest) × 0.408 × Ra, the mean being that of lowest and highest temperature and
 * Ra the radiation above the atmosphere (`extraterrestrialRadiation`); never below 0. Meant for means of five days and more: single
 * days are rough, and near the coast it tends to be off where there is much wind or damp.
 *
 * Missing: null without either temperature.
 *
 * Errors: `temperatures_crossed` when the highest is below the lowest; `bad_temperature`; `bad_latitude`; `not_a_date`.
 *
 * Source: Hargreaves GH, Samani ZA 1985, as equation 52 of Allen RG, Pereira LS, Raes D, Smith M 1998, Crop evapotranspiration, FAO
 * Irrigation and Drainage Paper 56.
 */
export function hargreavesEvapotranspiration({ tMinC, tMaxC, latitudeDeg, date }: HargreavesDay): number | null {
  const day = requiredDay(date);
  const radiation = extraterrestrialRadiation(latitudeDeg, day - requiredDay(`${date.slice(0, 4)}-01-01`) + 1);
  if (tMinC === null || tMaxC === null) return null;
  if (!Number.isFinite(tMinC) || !Number.isFinite(tMaxC)) {
    throw new StudyError("bad_temperature", `A temperature of ${tMinC} or ${tMaxC} makes no sense.`, "Give degrees Celsius.");
  }
  if (tMaxC < tMinC) {
    throw new StudyError(
      "temperatures_crossed",
      `The highest temperature of ${date}, ${tMaxC}, is below the lowest, ${tMinC}.`,
      "Correct the two, or give null.",
    );
  }
  const mean = (tMinC + tMaxC) / 2;
  return Math.max(0, 0.0023 * (mean + 17.8) * Math.sqrt(tMaxC - tMinC) * MM_PER_MJ * radiation);
}
