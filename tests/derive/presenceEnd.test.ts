import { expect, test } from "vitest";
import { presenceEnd } from "../../src/derive/presenceEnd.js";
import { horseStay } from "../study.js";

const stay = (joinedOn: string | null, leftOn: string | null) => horseStay({ horseId: "A", joinedOn, leftOn });

test("a stay that carries on the next day, or overlaps, is one presence", () => {
  const stays = [stay("2025-06-01", "2025-09-30"), stay(null, "2025-05-31"), stay("2025-09-15", "2025-11-30")];
  expect(presenceEnd(stays, "2025-01-01")).toBe("2025-11-30");
  expect(presenceEnd(stays, "2025-11-30")).toBe("2025-11-30");
});

test("a day between is a break", () => {
  const stays = [stay(null, "2025-05-31"), stay("2025-06-02", null)];
  expect(presenceEnd(stays, "2025-05-31")).toBe("2025-05-31");
  expect(presenceEnd(stays, "2025-06-02")).toBeNull();
});

test("still there, or no stay on that day: null", () => {
  expect(presenceEnd([stay(null, null)], "2025-01-01")).toBeNull();
  expect(presenceEnd([stay(null, "2025-01-31"), stay("2025-02-01", null)], "2025-01-01")).toBeNull();
  expect(presenceEnd([stay("2025-02-01", "2025-03-01")], "2025-01-01")).toBeNull();
  expect(presenceEnd([], "2025-01-01")).toBeNull();
});
