/** A published rate at which the wall grows down. */
export interface PublishedGrowthRate {
  readonly mmPerDay: number;
  readonly animals: string;
  readonly source: string;
}

/** Growth of the wall, mm a day. */
export interface GrowthRates {
  readonly slowestMmPerDay: number;
  readonly fastestMmPerDay: number;
}

/** The usual range of growth and the studies behind it; their abstracts were read, not their tables. */
export const growthRates: {
  readonly usual: GrowthRates;
  readonly published: readonly PublishedGrowthRate[];
} = {
  usual: { slowestMmPerDay: 0.202, fastestMmPerDay: 0.31 },
  published: [
    {
      mmPerDay: 0.202,
      animals: "ponies without supplement, 30.69 mm in 5 months",
      source: "Reilly JD et al. 1998, Equine Vet J Suppl 26:51",
    },
    { mmPerDay: 0.25, animals: "adult stallions, 7 mm in 28 days", source: "Josseck H et al. 1995, Equine Vet J 27:175" },
    {
      mmPerDay: 0.31,
      animals: "riding mares in spring and summer, 13 mm in 6 weeks",
      source: "Kolstrung R et al. 2012, Med Weter 68:426",
    },
  ],
};
