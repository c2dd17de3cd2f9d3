/** A setting of the sheet, whatever the case and spaces of its name there. */

import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";

/** Its value as text; "" when there is none. */
export function settingOf({ settings }: Pick<Loaded, "settings">, name: string): string {
  const found = Object.keys(settings).find((key) => nameKey(key) === nameKey(name));
  return found === undefined ? "" : (settings[found] ?? "");
}
