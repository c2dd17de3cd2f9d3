/** What is said about a water: whether its report adds up, its hardness and alkalinity, in whole sentences. */

import type { Balance } from "../src/core/balance.ts";
import { convertHardness } from "../src/core/hardness.ts";
import { CACO3_MG_PER_MEQ } from "../src/core/ions.ts";
import { sayList, sayNumber } from "../src/core/saying.ts";
import type { WaterCheck } from "../src/core/water-check.ts";
import type { WaterLine, WaterLines } from "../src/core/water-lines.ts";

/** Ions that make up nearly all of a water; without one of them the sums say little. */
const MAIN_IONS: readonly WaterLine[] = ["Ca", "Mg", "Na", "Alkalinity", "SO4", "Cl"];

export function missingIons(water: WaterLines): WaterLine[] {
  return MAIN_IONS.filter((line) => water[line] === undefined);
}

/** The rule of Standard Methods 1030 E that fits this water, as said. */
function allowed({ anionsMeqL, allowedMeqL }: Balance): string {
  return anionsMeqL <= 3 ? `${sayNumber(allowedMeqL)} meq/L` : `${anionsMeqL <= 10 ? 2 : 5} %`;
}

export function balanceWords(water: WaterLines, { balance }: Pick<WaterCheck, "balance">): string {
  const { cationsMeqL, anionsMeqL, errorPercent, acceptable } = balance;
  const missing = missingIons(water);
  if (missing.length > 0) {
    return `Cannot be said: the report has no ${sayList(missing, "or")}.`;
  }
  if (errorPercent === null) return "Cannot be said: there are no ions in it.";
  const sign = errorPercent > 0 ? "+" : "";
  const sums = `cations ${sayNumber(cationsMeqL)}, anions ${sayNumber(anionsMeqL)} meq/L, ${sign}${errorPercent.toFixed(2)} %`;
  return `${acceptable ? "It adds up" : "It does not add up"}: ${sums}. Accepted up to ${allowed(balance)} apart (Standard Methods 1030 E).`;
}

export function ecWords(water: WaterLines, { predictedEcMsCm }: Pick<WaterCheck, "predictedEcMsCm">): string {
  if (predictedEcMsCm === null) return "Cannot be worked out from this composition.";
  const missing = missingIons(water);
  const from = missing.length === 0 ? "the ions" : `the ions that are there (${sayList(missing, "and")} missing)`;
  const predicted = `${sayNumber(predictedEcMsCm)} mS/cm from ${from}`;
  if (water.EC === undefined) return `${predicted}; none was reported.`;
  const off = water.EC > 0 ? 100 * (predictedEcMsCm / water.EC - 1) : null;
  const apart = off === null ? "" : `, ${Math.abs(off).toFixed(1)} % ${off < 0 ? "less" : "more"} than reported`;
  return `${predicted}${apart} (${sayNumber(water.EC)} mS/cm).`;
}

export function hardnessWords(check: Pick<WaterCheck, "hardnessMgCaCO3L" | "hardnessClass">): string {
  const { hardnessMgCaCO3L, hardnessClass } = check;
  if (hardnessMgCaCO3L === null || hardnessClass === null) return "Needs Ca and Mg, or the hardness itself.";
  const degrees = sayNumber(convertHardness(hardnessMgCaCO3L, "mg/L CaCO3", "dH"));
  return `${sayNumber(hardnessMgCaCO3L)} mg/L CaCO3, ${degrees} °dH: ${hardnessClass} (USGS scale).`;
}

/** The class is how far FAO 29 restricts bicarbonate in overhead watering: below 1.5, to 8.5, above 8.5 meq/L. */
export function alkalinityWords(water: WaterLines, { flags }: Pick<WaterCheck, "flags">): string {
  if (water.Alkalinity === undefined) return "Not in the report.";
  const level = flags.find(({ line }) => line === "Alkalinity")?.level ?? "no";
  const meq = sayNumber(water.Alkalinity / CACO3_MG_PER_MEQ);
  return `${sayNumber(water.Alkalinity)} mg/L CaCO3, ${meq} meq/L: ${level} restriction (FAO 29 scale).`;
}
