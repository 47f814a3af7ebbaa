import { expect, test } from "vitest";
import { clusterWords } from "../../../src/answer/climate/clusterWords.js";
import type { ExposureEffect } from "../../../src/estimate/ExposureEffect.js";

const words = (of: Partial<ExposureEffect>) => clusterWords({ refused: null, ...of } as ExposureEffect);

test("clusters are named for what they are, one as one; without an effect there are none", () => {
  expect(words({ clusteredBy: "yardId", clusters: 24 })).toBe("24 yards");
  expect(words({ clusteredBy: "horseId", clusters: 1 })).toBe("1 horse in its yard");
  expect(words({ clusteredBy: "herd", clusters: 15 })).toBe("15 of herd");
  expect(words({ clusteredBy: null, clusters: null })).toBe("nothing alike");
  expect(words({ clusteredBy: null, clusters: null, refused: "separation" })).toBeNull();
});
