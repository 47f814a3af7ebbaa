/**
 * Colours of every chart. The named hues are the set for colour-blind readers by Okabe and Ito (2008), "Color Universal Design";
 * the others are greys. Colour never stands alone: shape, dash, place or a word says the same.
 */
export const palette = {
  black: "#000000",
  orange: "#E69F00",
  skyBlue: "#56B4E9",
  bluishGreen: "#009E73",
  yellow: "#F0E442",
  blue: "#0072B2",
  vermillion: "#D55E00",
  reddishPurple: "#CC79A7",
  ink: "#1f2423",
  quietInk: "#4d5553",
  grey: "#767c7a",
  paleGrey: "#c9cecc",
  grid: "#e3e6e5",
  paper: "#ffffff",
} as const;
