import { expect, test } from "vitest";
import { declaredModel } from "../../../src/answer/climate/declaredModel.js";
import { rainEffect } from "../../../src/answer/rainEffect.js";
import { answered } from "../climateAnswer.js";
import { seasonHerd } from "../seasonHerd.js";

const herd = seasonHerd({ yards: 6, horsesPerYard: 4 });
const yardOf = new Map(herd.horses.map(({ horseId, yardId }) => [horseId, yardId ?? ""]));
const seenBy = (observer: (yardId: string, place: number) => string) => ({
  ...herd,
  visits: herd.visits.map((row, place) => ({ ...row, observerId: observer(yardOf.get(row.horseId) ?? "", place) })),
});
const leftOutOf = (study: typeof herd) => {
  const declared = declaredModel(study);
  return typeof declared === "string" ? declared : declared.leftOut;
};

// Terms of the yards hold an observer equal who is alone at his yards: his own term would be their sum.
test("an observer who is the only one at each of a few yards is held equal by the yards", { timeout: 60_000 }, () => {
  const alone = seenBy((yardId) => (yardId < [...yardOf.values()].sort()[12]! ? "K" : "M"));
  expect(leftOutOf(alone)).toEqual(["observer: the same at every foot of a yard, and each yard has a term of its own"]);
  const one = answered(rainEffect(seenBy(() => "K")));
  expect(answered(rainEffect(alone)).sentence).toBe(one.sentence);
});

test("observers who share a yard are told apart", () => {
  expect(leftOutOf(seenBy((_, place) => (place % 2 === 0 ? "K" : "M")))).toEqual([]);
});
