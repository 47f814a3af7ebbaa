/** What stands on every page and notebook. */
export const generalCautions: readonly string[] = [
  "This describes records. It is not a diagnosis and not advice to trim, shoe, medicate or change an interval.",
  "A lame, bleeding, hot or punctured foot is vet work now.",
  "The farrier in attendance and the vet decide; local law governs who may do what to a horse's foot.",
  '"Went with" is not "caused". Feet that were not seen are not sound feet.',
];
