import { studyJsonSchema } from "./studyJsonSchema.js";

/**
 * The JSON Schema (draft 2020-12) of `study.json`, made from the schema it is checked with, so that an editor can complete and check the file. It refuses only what
 * reading refuses; three rules cannot be said in it and are checked by reading alone: that a day is in the calendar, that a thing is named once, and that two keys
 * exclude each other.
 */
export async function studySchema(): Promise<Readonly<Record<string, unknown>>> {
  const zod = await import("zod");
  const { $schema, ...rest } = zod.z.toJSONSchema(studyJsonSchema(zod), { io: "input" });
  return {
    $schema,
    title: "study.json",
    description: "What a study folder says about itself: its name, its settings, and how its files are read.",
    ...rest,
  };
}
