import { createRequire } from "node:module";

/** The typeface drawn into pictures, shipped as a dependency so that pictures are the same on every machine. */
export interface ShippedFont {
  readonly family: string;
  /** Paths of the TrueType files. */
  readonly regular: string;
  readonly semiBold: string;
}

/** Where the shipped Source Sans 3 (SIL Open Font License) lies. */
export function shippedFont(): ShippedFont {
  const find = createRequire(import.meta.url);
  const path = (weight: string) => find.resolve(`@expo-google-fonts/source-sans-3/${weight}/SourceSans3_${weight}.ttf`);
  return { family: "Source Sans 3", regular: path("400Regular"), semiBold: path("600SemiBold") };
}
