/** The grid itself: Univer with the presets for sheets, sorting, filters, data validation and conditional formats. */

import { LocaleType, LogLevel, merge, type Plugin, type PluginCtor, Univer } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import conditionalWords from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import { CalculationMode, UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreWords from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import validationWords from "@univerjs/preset-sheets-data-validation/locales/en-US";
import { UniverSheetsFilterPreset } from "@univerjs/preset-sheets-filter";
import filterWords from "@univerjs/preset-sheets-filter/locales/en-US";
import { UniverSheetsSortPreset } from "@univerjs/preset-sheets-sort";
import sortWords from "@univerjs/preset-sheets-sort/locales/en-US";

export interface Started {
  readonly univer: Univer;
  readonly api: FUniver;
}

/** What the meta package's createUniver does: words merged, plugins of all presets registered once each, then the facade. */
export function startUniver(container: string): Started {
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: {
      [LocaleType.EN_US]: merge({}, coreWords, sortWords, filterWords, validationWords, conditionalWords),
    },
    logLevel: LogLevel.ERROR,
  });
  const presets = [
    UniverSheetsCorePreset({
      container,
      header: true,
      ribbonType: "simple",
      disableTextFormatAlert: true,
      disableTextFormatMark: true,
      sheets: { disableForceStringAlert: true, disableForceStringMark: true },
      // The code of dist/ may have changed since the sheet was kept: work everything out again.
      formula: { initialFormulaComputing: CalculationMode.FORCED },
    }),
    UniverSheetsSortPreset(),
    UniverSheetsFilterPreset(),
    UniverSheetsDataValidationPreset(),
    UniverSheetsConditionalFormattingPreset(),
  ];
  const seen = new Set<unknown>();
  for (const entry of presets.flatMap((preset) => preset.plugins)) {
    const [plugin, config] = (Array.isArray(entry) ? entry : [entry]) as [PluginCtor<Plugin>, never?];
    if (seen.has(plugin)) continue;
    seen.add(plugin);
    univer.registerPlugin(plugin, config);
  }
  return { univer, api: FUniver.newAPI(univer) };
}
