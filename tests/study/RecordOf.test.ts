import { expectTypeOf, test } from "vitest";
import type { changeColumns } from "../../src/study/changeColumns.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import type { GaugeDay } from "../../src/study/GaugeDay.js";
import type { horseColumns } from "../../src/study/horseColumns.js";
import type { HorseStay } from "../../src/study/HorseStay.js";
import type { outlineColumns } from "../../src/study/outlineColumns.js";
import type { OutlinePoint } from "../../src/study/OutlinePoint.js";
import type { RecordOf } from "../../src/study/RecordOf.js";
import type { Source } from "../../src/study/Source.js";
import type { visitColumns } from "../../src/study/visitColumns.js";
import type { weatherColumns } from "../../src/study/weatherColumns.js";
import type { Yard } from "../../src/study/Yard.js";
import type { yardColumns } from "../../src/study/yardColumns.js";
import type { YardChange } from "../../src/study/YardChange.js";

// Held by the compiler: `npm run typecheck` fails when a record type and its column table drift apart.
test("the written-out record types are what the column tables say", () => {
  expectTypeOf<Omit<FootVisit, keyof Source>>().toEqualTypeOf<RecordOf<typeof visitColumns>>();
  expectTypeOf<Omit<HorseStay, keyof Source>>().toEqualTypeOf<RecordOf<typeof horseColumns>>();
  expectTypeOf<Omit<Yard, keyof Source>>().toEqualTypeOf<RecordOf<typeof yardColumns>>();
  expectTypeOf<Omit<YardChange, keyof Source>>().toEqualTypeOf<RecordOf<typeof changeColumns>>();
  expectTypeOf<Omit<GaugeDay, keyof Source>>().toEqualTypeOf<RecordOf<typeof weatherColumns>>();
  expectTypeOf<Omit<OutlinePoint, keyof Source>>().toEqualTypeOf<RecordOf<typeof outlineColumns>>();
});
