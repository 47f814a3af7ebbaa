import fc from "fast-check";
import { expect, test } from "vitest";
import { benjaminiHochberg } from "../../src/estimate/benjaminiHochberg.js";
import { holm } from "../../src/estimate/holm.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

test("fifteen p values (Benjamini & Hochberg 1995, from memory), and a list with ties, by R's p.adjust", () => {
  // prettier-ignore
  const list = [.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1];
  expectNear(holm(list), closedForm("p holm"), 1e-14);
  expectNear(holm([0.04, 0.01, 0.01, 0.2, 0.03, 0.9, 0.03]), closedForm("ties holm"), 1e-14);
});

test("it is at least as strict as the false discovery rate; order is kept and nulls stay apart", () => {
  fc.assert(
    fc.property(fc.array(fc.option(fc.double({ min: 0, max: 1, noNaN: true })), { maxLength: 20 }), (list) => {
      const [strict, loose] = [holm(list), benjaminiHochberg(list)];
      list.forEach((p, i) => {
        if (p === null) expect(strict[i]).toBeNull();
        else expect(strict[i]! >= loose[i]! - 1e-12 && strict[i]! <= 1).toBe(true);
      });
      expect(holm([...list].reverse())).toEqual([...strict].reverse());
    }),
  );
});

test("a p value outside 0 to 1 is refused", () => {
  expect(faultCode(() => holm([-0.1]))).toBe("out_of_range");
});
