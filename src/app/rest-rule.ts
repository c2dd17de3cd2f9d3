/** The household's rest rule as Settings has it. */

import { type RestRule, readRestRule, restSettings } from "../core/rest-rule.ts";
import type { Settings } from "../sheet/settings.ts";

/** Throws BadInput naming the setting that cannot be read; the default where there is no Settings tab. */
export function restRuleIn(settings: Settings | null): RestRule {
  return readRestRule(restSettings((setting) => settings?.text(setting) ?? ""));
}
