import { expect, test } from "vitest";
import { fitLogistic } from "../../src/estimate/fitLogistic.js";
import { fitMisclassifiedLogistic } from "../../src/estimate/fitMisclassifiedLogistic.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const rows = referenceRows("regression/feet.csv");
const given = { rows, outcome: "thrush", terms: ["wet", "hind"] } as const;

// R 4.2.2: optim on the likelihood written out, expected information and sandwich by numDeriv.
test("sensitivity 0.85, specificity 0.97, by maximum likelihood in R", () => {
  const wanted = (quantity: string) => climateReference("misclassified", quantity);
  const fit = fitMisclassifiedLogistic({ ...given, sensitivity: 0.85, specificity: 0.97 });
  // BFGS with numerical slopes leaves about 1e-5 in the smallest coefficient.
  expectNear(
    fit.coefficients.map(({ estimate }) => estimate),
    wanted("estimate"),
    1e-4,
  );
  expectNear(
    fit.coefficients.map(({ se }) => se),
    wanted("se"),
    1e-5,
  );
  expectNear([fit.deviance / -2], wanted("logLik"), 1e-8);
  const byYard = fitMisclassifiedLogistic({ ...given, sensitivity: 0.85, specificity: 0.97, cluster: "yard" });
  expectNear(
    byYard.coefficients.map(({ se }) => se),
    wanted("se by yard"),
    1e-4,
  );
});

test("a perfect examination gives the plain regression", () => {
  const [fit, plain] = [
    fitMisclassifiedLogistic({ ...given, sensitivity: 1, specificity: 1 }),
    fitLogistic({ ...given, interval: "wald" }),
  ];
  expectNear(
    fit.coefficients.map(({ estimate }) => estimate),
    plain.coefficients.map(({ estimate }) => estimate),
    1e-7,
  );
  expectNear(
    fit.coefficients.map(({ se }) => se),
    plain.coefficients.map(({ se }) => se),
    1e-6,
  );
});

test("values that cannot be, or cannot have produced the records, are refused", () => {
  const ask = (sensitivity: number, specificity: number) =>
    faultCode(() => fitMisclassifiedLogistic({ ...given, sensitivity, specificity }));
  expect([ask(1.2, 0.9), ask(0.5, 0.5), ask(0.9, 0.4)]).toEqual(["out_of_range", "out_of_range", "out_of_range"]);
});
