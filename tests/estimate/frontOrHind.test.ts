import { expect, test } from "vitest";
import { frontOrHind } from "../../src/estimate/frontOrHind.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { referenceRows } from "./reference.js";
import { shapeReference } from "./shapeReference.js";

const four = ["Sepal.Length", "Sepal.Width", "Petal.Length", "Petal.Width"];
// Fisher's iris (1936): two species stand for the ends, each flower a horse of its own, so that a horse held out is a row held out.
const flowers = referenceRows("iris.csv")
  .filter((row) => row["Species"] !== "setosa")
  .map((row, place) => ({
    ...row,
    horseId: `h${place}`,
    end: row["Species"] === "versicolor" ? ("fore" as const) : ("hind" as const),
    side: "left" as const,
  }));

test("held-out probabilities are those of MASS::lda with CV = TRUE (R), and logistic regression stands beside", () => {
  const rule = frontOrHind(flowers, four);
  const wanted = shapeReference("iris two posterior held out").filter((_, place) => place % 2 === 0);
  rule.known.forEach(({ probabilityFore }, place) => { expect(probabilityFore).toBeCloseTo(wanted[place]!, 9); }); // prettier-ignore
  expect([rule.n, rule.horses, rule.specimens]).toEqual([100, 100, []]);
  expect(rule.discriminant.crossValidated.errors).toBe(3);
  const sepals = frontOrHind(flowers, four.slice(0, 2));
  expect(sepals.logistic!.crossValidated.n).toBe(100);
  expect(sepals.logistic!.rows[0]!.outcome).toBe(true);
  expect(sepals.logisticNote).toBeNull();
});

test("specimens make no part of the rule and are judged by it; a missing measure gives no probability", () => {
  const [first] = flowers;
  const specimens = [
    { ...first!, horseId: "s1", side: null, end: "hind" as const },
    { ...first!, horseId: "s2", side: null, "Petal.Width": null },
  ];
  const with2 = frontOrHind([...specimens, ...flowers], four);
  const without = frontOrHind(flowers, four);
  expect(with2.discriminant.axes).toEqual(without.discriminant.axes);
  expect(with2.known.map(({ probabilityFore }) => probabilityFore)).toEqual(
    without.known.map(({ probabilityFore }) => probabilityFore),
  );
  expect(with2.known[0]!.foot).toBe(first);
  const judged = without.discriminant.rows[0]!.posterior["fore"]!;
  expect(with2.specimens).toEqual([
    { foot: specimens[0], probabilityFore: judged },
    { foot: specimens[1], probabilityFore: null },
  ]);
});

test("a horse is held out with all its feet", () => {
  const random = seededRandom("own shapes");
  // Ends do not differ; horses do, and each horse shows one end only.
  const rows = Array.from({ length: 16 }, (_, horse) => {
    const own = random.normal(0, 1);
    return Array.from({ length: 8 }, () => ({
      horseId: `h${horse}`,
      end: horse % 2 === 0 ? ("fore" as const) : ("hind" as const),
      side: "left" as const,
      a: own + random.normal(0, 0.1),
      b: random.normal(0, 1),
    }));
  }).flat();
  const { discriminant } = frontOrHind(rows, ["a", "b"]);
  expect(discriminant.crossValidated.method).toBe("Held out: each horseId by a rule made without it, 16 in all");
});

test("ends that can be told without error leave logistic regression without an answer, said in words", () => {
  const rows = flowers.map((row, place) => ({ ...row, clear: (row.end === "fore" ? 0 : 10) + (place % 7) / 10 }));
  const rule = frontOrHind(rows, ["clear"]);
  expect(rule.discriminant.crossValidated.errors).toBe(0);
  expect(rule.logistic).toBeNull();
  expect(rule.logisticNote).toMatch(/without error/);
});
