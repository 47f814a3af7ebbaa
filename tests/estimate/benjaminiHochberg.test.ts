import fc from "fast-check";
import { expect, test } from "vitest";
import { benjaminiHochberg } from "../../src/estimate/benjaminiHochberg.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// The fifteen p values of Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300, from memory; they call the first four discoveries at 0.05.
// prettier-ignore
const published = [.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1];

test("the published fifteen, and a list with ties, by R's p.adjust", () => {
  const adjusted = benjaminiHochberg(published);
  expectNear(adjusted, closedForm("p BH"), 1e-14);
  expect(adjusted.filter((p) => p! <= 0.05)).toHaveLength(4);
  expectNear(benjaminiHochberg([0.04, 0.01, 0.01, 0.2, 0.03, 0.9, 0.03]), closedForm("ties BH"), 1e-14);
});

test("order is kept, adjusting never lowers, and nulls stay apart", () => {
  fc.assert(
    fc.property(fc.array(fc.option(fc.double({ min: 0, max: 1, noNaN: true })), { maxLength: 20 }), (list) => {
      const adjusted = benjaminiHochberg(list);
      list.forEach((p, i) => {
        if (p === null) expect(adjusted[i]).toBeNull();
        else expect(adjusted[i]! >= p && adjusted[i]! <= 1).toBe(true);
      });
      const alone = benjaminiHochberg(list.filter((p) => p !== null));
      expect(adjusted.filter((p) => p !== null)).toEqual(alone);
      expect(benjaminiHochberg([...list].reverse())).toEqual([...adjusted].reverse());
    }),
  );
});

test("a p value outside 0 to 1 or NaN is refused", () => {
  expect(faultCode(() => benjaminiHochberg([0.1, 1.2]))).toBe("out_of_range");
  expect(faultCode(() => benjaminiHochberg([0.1, NaN]))).toBe("not_a_number");
});
