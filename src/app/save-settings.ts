/** Writes what the panel was told about the household into Settings. */

import { openBook } from "../sheet/find.ts";
import { SETTINGS } from "../sheet/list-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { requireSettings, settingCell, writeSettings } from "../sheet/settings.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";

/** Writes the values that are not there already. Answers with all settings as they stand then. */
export function saveSettings(workbook: WorkbookPort, request: RequestFor<"save settings">): ReplyFor<"save settings"> {
  return workbook.locked(() => {
    const settings = requireSettings(openBook(workbook, [SETTINGS.name]));
    const changed = request.settings.filter(({ setting, value }) => settings.text(setting) !== value.trim());
    writeSettings(
      settings,
      changed.map(({ setting, value }) => [setting, settingCell(value)]),
    );
    const all = settings.all();
    for (const { setting, value } of changed) all[setting] = value.trim();
    return { settings: all };
  });
}
