import { chiSquareQuantile } from "./chiSquareQuantile.js";
import { normalQuantile } from "./normalQuantile.js";

interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Limits of a Poisson mean from the number of events seen, by kind. A lower limit below 0, as the approximations have with few
 * events, is 0.
 *
 * Source: `exact`: Garwood F (1936) Biometrika 28:437-442, chi-square form as in Ulm K (1990) Am J Epidemiol 131:373-375; `anscombe`:
 * Anscombe FJ (1948) Biometrika 35:246-254, roots with a correction of 1/8; `byar`: Breslow NE, Day NE (1987) Statistical Methods
 * in Cancer Research II, cube roots.
 */
export const poissonLimits: Readonly<Record<"exact" | "anscombe" | "byar", (events: number, level: number) => Limits>> = {
  exact: (events, level) => ({
    lower: events === 0 ? 0 : chiSquareQuantile((1 - level) / 2, 2 * events) / 2,
    upper: chiSquareQuantile((1 + level) / 2, 2 * events + 2) / 2,
  }),
  anscombe: (events, level) => {
    const half = normalQuantile((1 + level) / 2) / 2;
    return {
      lower: Math.max(0, Math.sqrt(Math.max(0, events - 1 / 8)) - half) ** 2,
      upper: (Math.sqrt(events + 7 / 8) + half) ** 2,
    };
  },
  byar: (events, level) => {
    const third = normalQuantile((1 + level) / 2) / 3;
    const scaled = (x: number, sign: number) => x * Math.max(0, 1 - 1 / (9 * x) + (sign * third) / Math.sqrt(x)) ** 3;
    return { lower: events === 0 ? 0 : scaled(events, -1), upper: scaled(events + 1, 1) };
  },
};
