import type { Settings } from "./Settings.js";
import { settingRules } from "./settingRules.js";
import type { Study } from "./Study.js";
import { StudyError } from "./StudyError.js";

/**
 * The same study under other settings; the study given is not changed.
 *
 * Errors: `unknown_setting` for a name that is no setting, `bad_setting` for a value that cannot be used. Both are checked when it
 * runs, since a notebook cell is not checked strictly.
 */
export function withSettings(study: Study, changes: Partial<Settings>): Study {
  for (const [name, value] of Object.entries(changes)) {
    const rule = Object.hasOwn(settingRules, name) ? settingRules[name as keyof Settings] : undefined;
    if (rule === undefined) {
      throw new StudyError(
        "unknown_setting",
        `There is no setting ${name}.`,
        `The settings are ${Object.keys(settingRules).join(", ")}.`,
      );
    }
    if (!rule.allows(value)) {
      throw new StudyError(
        "bad_setting",
        `The setting ${name} is ${JSON.stringify(value)}, which cannot be used.`,
        `Give ${rule.expected}.`,
      );
    }
  }
  return { ...study, settings: { ...study.settings, ...changes } };
}
