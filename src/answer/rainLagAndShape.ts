import { forestChart } from "../chart/forestChart.js";
import { ratioProfileChart } from "../chart/ratioProfileChart.js";
import type { Chart } from "../chart/Chart.js";
import { capital } from "../chart/parts/capital.js";
import type { Table } from "../chart/Table.js";
import { describe } from "../estimate/describe.js";
import type { ExposureModel } from "../estimate/ExposureModel.js";
import { exposureShape } from "../estimate/exposureShape.js";
import { exposureWindows } from "../estimate/exposureWindows.js";
import { heldOutPrediction, type HeldOutPrediction } from "../estimate/heldOutPrediction.js";
import { lagProfile } from "../estimate/lagProfile.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked, climateSeed, rainCautions } from "./climate/asked.js";
import { declaredModel } from "./climate/declaredModel.js";
import { valueOf } from "./climate/valueOf.js";
import { effectTable } from "./climate/effectTable.js";
import { exposureWords } from "./climate/exposureWords.js";
import { pWords } from "./climate/pWords.js";
import { triedExposures } from "./climate/triedExposures.js";
import { whenPossible } from "./climate/whenPossible.js";
import { certain } from "./climate/certain.js";
import { rounded } from "./words/rounded.js";

const { id, question, notEnough } = asked("rain-lag-and-shape");

/** Exploratory: a grid of windows, the days before the visit one by one, the shape, prediction of yards held out. Unit: a foot at a visit. */
export function rainLagAndShape(study: Study): Answer | NotEnoughData {
  const declared = declaredModel(study);
  if (typeof declared === "string") return notEnough(declared);
  const { settings } = study;
  const { rows, model } = declared;
  const { primaryExposure, level, exposurePer } = settings;
  // Estimating equations: quick, and robust to what each window leaves over.
  const gee: ExposureModel & typeof model = { ...model, method: "gee" };
  const recorded = (column: string) => rows.some((row) => row.case !== null && valueOf(row, column) !== null);
  const columns = triedExposures(settings).filter(recorded);
  const unknown = triedExposures(settings).filter((column) => !recorded(column));
  const perOf = (column: string) => (column === primaryExposure ? exposurePer : column.includes("Mm") ? 10 : 1);
  const grid = exposureWindows(
    gee,
    columns.map((exposure) => ({ exposure, per: perOf(exposure) })),
    primaryExposure,
  );
  const declaredLine = certain(grid.find(({ primary }) => primary));
  if (declaredLine.n === null) return notEnough(`The declared exposure has no estimate: ${declaredLine.note ?? ""}`);
  const random = seededRandom(climateSeed);
  const { byDay, per } = { byDay: "rainMmByDay", per: 10 };
  const lags = whenPossible(() => lagProfile({ ...gee, byDay, per, random: random.stream("lags") }));
  const amounts = rows.map((row) => valueOf(row, primaryExposure) as number | null);
  const { min, max, median } = describe(amounts);
  const at = Array.from({ length: 25 }, (_, place) => min + ((max - min) * place) / 24);
  const shape = whenPossible(() => exposureShape(gee, { at, reference: median, random: random.stream("shape") }));
  const heldOut = whenPossible(() => heldOutPrediction(model));
  const inGrid = grid.filter(({ holmP }) => holmP !== null && holmP < 1 - level).length;
  const charts: Chart[] = [
    forestChart(
      grid.map(({ exposure, estimate, lower, upper, n, primary }) => ({
        label: exposureWords(exposure),
        estimate,
        lower,
        upper,
        n,
        primary,
      })),
      {
        title: `${inGrid} of ${grid.length} exposures stand after Holm's adjustment`,
        ratioTitle: "Odds ratio per 10 mm or per day",
        level,
        unit: "feet at visits",
        explained: ["All that were tried; all but the declared one are exploratory."],
      },
    ),
    ...(typeof lags === "string"
      ? []
      : [
          ratioProfileChart(
            lags.days.map(({ lagDays, ...band }) => ({ place: lagDays, ...band })),
            {
              title: "Which days before the visit went with thrush",
              placeTitle: "Days before the visit",
              ratioTitle: "Odds ratio per 10 mm on that day",
              level,
            },
          ),
        ]),
    ...(typeof shape === "string"
      ? []
      : [
          ratioProfileChart(
            shape.points.map(({ exposure, ...band }) => ({ place: Number(exposure.toFixed(1)), ...band })),
            {
              title: `Straight or bent: p of curvature ${pWords(shape.curvature.p)}`,
              placeTitle: capital(exposureWords(primaryExposure)),
              ratioTitle: `Odds ratio against ${rounded(median, 0)}${exposureWords(primaryExposure).endsWith("(mm)") ? " mm" : ""}`,
              level,
            },
          ),
        ]),
  ];
  return {
    kind: "answer",
    id,
    question,
    sentence:
      `Exploratory: of ${grid.length} exposures tried, ${inGrid} stand after Holm's adjustment. ${typeof lags === "string" ? "" : `Days before the visit, together: p ${pWords(lags.anyDay.p)}. `}${typeof heldOut === "string" ? "" : `Foretelling yards held out, rain changes the Brier score by ${certain(heldOut.gain.estimate).toFixed(4)} (${certain(heldOut.gain.lower).toFixed(4)} to ${certain(heldOut.gain.upper).toFixed(4)}; above 0 it helps).`}`.trim(),
    tables: [
      effectTable(
        "Windows and kinds of wetness",
        grid.map((effect) => ({
          ...effect,
          name: exposureWords(effect.exposure),
          kind: effect.primary ? "declared" : "exploratory",
          adjustedP: effect.holmP,
        })),
        level,
      ),
      tests(lags, shape),
      ...(typeof heldOut === "string" ? [] : prediction(heldOut)),
    ],
    charts,
    cautions: [
      ...rainCautions,
      "Neighbouring windows hold much the same rain: they are one look seen many times, not many findings.",
      ...(unknown.length > 0 ? [`Not known at any visit, so not tried: ${unknown.map(exposureWords).join("; ")}.`] : []),
      ...[lags, shape, heldOut].filter((part) => typeof part === "string"),
    ],
    method: {
      unit: "a foot at a visit, in its horse, in its yard",
      n: declaredLine.n,
      missing: rows.length - declaredLine.n,
      text: `Case: ${caseWords(settings)}. Estimating equations with what was declared held equal.${typeof lags === "string" ? "" : ` ${lags.method}.`}`,
      links: ["exposureWindows", "holm", "lagProfile", "exposureShape", "heldOutPrediction", "naturalSpline"],
    },
  };
}

function tests(lags: ReturnType<typeof lagProfile> | string, shape: ReturnType<typeof exposureShape> | string): Table {
  const line = (
    what: string,
    test: { readonly statistic: number; readonly df: readonly number[]; readonly p: number } | null,
    n: number | null,
    note: string,
  ) => ({
    what,
    statistic: test?.statistic ?? null,
    df: test?.df.join(", ") ?? null,
    p: test?.p ?? null,
    n,
    note,
  });
  return {
    caption: "Tests of lag and shape (exploratory)",
    columns: [
      { name: "what", title: "What" },
      { name: "statistic", title: "F", digits: 2 },
      { name: "df", title: "Degrees of freedom" },
      { name: "p", title: "p", digits: 4, p: true },
      { name: "n", title: "Feet" },
      { name: "note", title: "Method", below: "long" },
    ],
    rows: [
      typeof lags === "string"
        ? line("No day of the 42 matters", null, null, lags)
        : line("No day of the 42 matters", lags.anyDay, lags.n, lags.method),
      typeof shape === "string"
        ? line("The log odds move in a straight line", null, null, shape)
        : line("The log odds move in a straight line", shape.curvature, shape.n, shape.method),
    ],
  };
}

function prediction(found: HeldOutPrediction): Table[] {
  const line = (what: string, value: number, lower: number | null, upper: number | null) => ({
    what,
    value,
    lower,
    upper,
    n: found.n,
    yards: found.groups,
  });
  return [
    {
      caption: "Yards held out in turn",
      columns: [
        { name: "what", title: "What" },
        { name: "value", title: "Value", digits: 4 },
        { name: "lower", title: "From", digits: 4 },
        { name: "upper", title: "To", digits: 4 },
        { name: "n", title: "Feet" },
        { name: "yards", title: "Yards" },
      ],
      rows: [
        line("Brier score with the exposure", found.brier, null, null),
        line("Brier score without it", found.brierWithout, null, null),
        line("Brier score of the bare prevalence elsewhere", found.brierPrevalence, null, null),
        line("Gain from the exposure", certain(found.gain.estimate), found.gain.lower, found.gain.upper),
        line(
          "Calibration slope (1 is right)",
          certain(found.calibrationSlope.estimate),
          found.calibrationSlope.lower,
          found.calibrationSlope.upper,
        ),
        line(
          "Calibration in the large (0 is right)",
          certain(found.calibrationInTheLarge.estimate),
          found.calibrationInTheLarge.lower,
          found.calibrationInTheLarge.upper,
        ),
      ],
    },
    {
      caption: "Foretold and found, by tenths of the feet",
      columns: [
        { name: "predicted", title: "Foretold", percent: true, digits: 1 },
        { name: "observed", title: "Found", percent: true, digits: 1 },
        { name: "cases", title: "Cases" },
        { name: "n", title: "of feet" },
      ],
      rows: found.bins.map((bin) => ({ ...bin })),
    },
  ];
}
