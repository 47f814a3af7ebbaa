/** With fewer yards, yards are terms of the model and horses the clusters. */
export const fewestYards = 10;
