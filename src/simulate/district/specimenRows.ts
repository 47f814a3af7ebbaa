import type { DistrictRow } from "./DistrictRow.js";

/** Two detached feet that were brought in: horse, yard and side unknown, front or hind judged from the shape. */
export function specimenRows(): DistrictRow[] {
  const shared = {
    visit_date: "2025-06-12",
    stage: "single",
    observer_id: "K",
    examined: "yes",
    note: "detached, end judged from the shape",
  };
  return [
    {
      visitDate: "2025-06-12",
      yardId: "",
      horseId: "specimen 1",
      cells: {
        ...shared,
        horse_id: "specimen 1",
        foot: "F",
        hoof_width_mm: 126,
        hoof_length_mm: 121,
        frog_width_mm: 55,
        frog_length_mm: 86,
      },
    },
    {
      visitDate: "2025-06-12",
      yardId: "",
      horseId: "specimen 2",
      cells: {
        ...shared,
        horse_id: "specimen 2",
        foot: "H",
        hoof_width_mm: 112,
        hoof_length_mm: 118,
        frog_width_mm: 51,
        frog_length_mm: 84,
      },
    },
  ];
}
