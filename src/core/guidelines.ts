/** Published limits for irrigation and drinking water, and which lines of a report they flag. */

import { CACO3_MG_PER_MEQ, ION_G_MOL } from "./ions.ts";
import { sayNumber } from "./saying.ts";
import type { WaterLine, WaterLines } from "./water-lines.ts";

export type Level = "slight to moderate" | "severe" | "outside" | "above the limit" | "mind";

export interface Flag {
  readonly line: WaterLine | "Sodium ratio";
  readonly value: number;
  readonly unit: string;
  readonly level: Level;
  /** A whole sentence, with the limit in the line's own unit. */
  readonly words: string;
  readonly source: string;
}

const FAO = "Ayers & Westcot 1985, FAO Irrigation and Drainage Paper 29 Rev. 1, table 1";
const EPA = "US EPA drinking-water limits, 40 CFR 141";

/**
 * Sodium adsorption ratio, Na / √((Ca + Mg) / 2) in meq/L: how far sodium outweighs calcium and magnesium. Null without
 * all three, or where there is sodium but neither Ca nor Mg.
 */
export function sodiumRatio(water: WaterLines): number | null {
  if (water.Na === undefined || water.Ca === undefined || water.Mg === undefined) return null;
  const hard = (2 * water.Ca) / ION_G_MOL.Ca + (2 * water.Mg) / ION_G_MOL.Mg;
  if (water.Na === 0) return 0;
  return hard > 0 ? water.Na / ION_G_MOL.Na / Math.sqrt(hard / 2) : null;
}

interface Band {
  readonly line: Flag["line"];
  readonly unit: string;
  /** In `unit`; null = not measured. */
  readonly value: (water: WaterLines) => number | null;
  /** Restriction begins above the first, is severe above the second. */
  readonly limits: readonly [number, number];
  readonly what: string;
}

const has = (value: number | undefined, factor: number): number | null => (value === undefined ? null : value * factor);

/** Limits written for fields; a pot without drainage collects what it is given, so they are if anything too wide. */
const BANDS: readonly Band[] = [
  { line: "EC", unit: "mS/cm", value: (w) => w.EC ?? null, limits: [0.7, 3], what: "Salts altogether" },
  { line: "Sodium ratio", unit: "", value: sodiumRatio, limits: [3, 9], what: "Sodium against calcium and magnesium" },
  { line: "Cl", unit: "meq/L", value: (w) => has(w.Cl, 1 / ION_G_MOL.Cl), limits: [4, 10], what: "Chloride" },
  { line: "B", unit: "mg/L", value: (w) => w.B ?? null, limits: [0.7, 3], what: "Boron" },
  {
    line: "Alkalinity",
    unit: "meq/L",
    value: (w) => has(w.Alkalinity, 1 / CACO3_MG_PER_MEQ),
    limits: [1.5, 8.5],
    what: "Bicarbonate",
  },
];

/** mg/L of the line's own unit for one meq/L, to say a limit also in what the report prints. */
const MG_PER_MEQ: Readonly<Partial<Record<Flag["line"], number>>> = { Cl: ION_G_MOL.Cl, Alkalinity: CACO3_MG_PER_MEQ };

function limitWords(band: Band, limit: number): string {
  const mg = MG_PER_MEQ[band.line];
  const after = band.line === "Alkalinity" ? " as CaCO3" : "";
  const own = mg === undefined ? "" : `, ${sayNumber(limit * mg)} mg/L${after}`;
  return `${limit}${band.unit === "" ? "" : ` ${band.unit}`}${own}`;
}

/** Drinking-water limits, mg/L. */
const DRINKING: readonly (readonly [line: WaterLine, limit: number, what: string, more: string])[] = [
  ["Free chlorine", 4, "Free chlorine", ""],
  ["Chloramine", 4, "Chloramine (as total chlorine)", ""],
  ["NO3-N", 10, "Nitrate as N", " Do not give it to infants; have a private well tested."], // memory
];

/** Every line that a guideline flags, with its source and unit. Lines that were not measured are not judged. */
export function guidelineFlags(water: WaterLines): Flag[] {
  const flags: Flag[] = [];
  for (const band of BANDS) {
    const value = band.value(water);
    if (value === null || value < band.limits[0]) continue;
    const level: Level = value > band.limits[1] ? "severe" : "slight to moderate";
    const limit = level === "severe" ? band.limits[1] : band.limits[0];
    flags.push({
      line: band.line,
      value,
      unit: band.unit,
      level,
      words: `${band.what}: ${sayNumber(value)}${band.unit === "" ? "" : ` ${band.unit}`}, restriction is ${level} from ${limitWords(band, limit)}.`,
      source: FAO,
    });
  }
  const { pH } = water;
  if (pH !== undefined && (pH < 6.5 || pH > 8.4)) {
    const words = `pH ${sayNumber(pH)} is outside the normal range of waters, 6.5 to 8.4: look for the cause.`;
    flags.push({ line: "pH", value: pH, unit: "", level: "outside", words, source: FAO });
  }
  for (const [line, limit, what, more] of DRINKING) {
    const value = water[line];
    if (value === undefined || value <= limit) continue;
    const words = `${what}: ${sayNumber(value)} mg/L is above the drinking-water limit of ${limit} mg/L.${more}`;
    flags.push({ line, value, unit: "mg/L", level: "above the limit", words, source: EPA });
  }
  const disinfectant = disinfectantFlag(water);
  if (disinfectant !== null) flags.push(disinfectant);
  return flags;
}

function disinfectantFlag(water: WaterLines): Flag | null {
  const source = "common practice, no source";
  const [free, bound] = [water["Free chlorine"] ?? 0, water.Chloramine ?? 0];
  if (bound > 0) {
    const words = "Chloramine does not leave on standing; a carbon filter made for it takes it out.";
    return { line: "Chloramine", value: bound, unit: "mg/L", level: "mind", words, source };
  }
  if (free > 0) {
    const words = "Free chlorine leaves when the water stands open overnight.";
    return { line: "Free chlorine", value: free, unit: "mg/L", level: "mind", words, source };
  }
  return null;
}

export interface WaterAdvice {
  readonly advice: "use" | "blend" | "leave" | "measure";
  /** Share of this water in a blend with water that holds next to nothing; null unless to blend. */
  readonly share: number | null;
  readonly sentence: string;
}

/** Below this much tap water in a blend it is not worth carrying. */
const LEAST_SHARE = 0.1;
/**
 * Lines that only blending lowers, with the level to blend down to: FAO 29's "no restriction". Alkalinity is not among
 * them, acid takes it; from 8.5 meq/L on it is, since so much acid brings as many salts.
 */
function blendDown(water: WaterLines): { line: Flag["line"]; share: number }[] {
  const down: { line: Flag["line"]; share: number }[] = [];
  for (const band of BANDS) {
    const value = band.value(water);
    if (value === null) continue;
    const limit = band.line === "Alkalinity" ? band.limits[1] : band.limits[0];
    if (value <= limit) continue;
    // the ratio falls with the square root of the dilution, everything else with the dilution
    down.push({ line: band.line, share: band.line === "Sodium ratio" ? (limit / value) ** 2 : limit / value });
  }
  return down.sort((a, b) => a.share - b.share);
}

/** One sentence of advice: use it, blend it with low-mineral water (with the share), or leave it. */
export function waterAdvice(water: WaterLines): WaterAdvice {
  const judged = BANDS.some((band) => band.value(water) !== null);
  if (!judged) {
    return {
      advice: "measure",
      share: null,
      sentence: "Measure at least EC and alkalinity; nothing here can be judged yet.",
    };
  }
  const worst = blendDown(water)[0];
  if (worst === undefined) {
    const alkaline = (water.Alkalinity ?? 0) / CACO3_MG_PER_MEQ > 1.5;
    return {
      advice: "use",
      share: null,
      sentence: alkaline ? "Use it, with acid for its alkalinity." : "Use it as it is.",
    };
  }
  const { line, share } = worst;
  const name =
    line === "EC"
      ? "its salts"
      : line === "Sodium ratio"
        ? "its sodium"
        : line === "Cl"
          ? "its chloride"
          : line === "B"
            ? "its boron"
            : "its alkalinity";
  if (share < LEAST_SHARE) {
    return {
      advice: "leave",
      share: null,
      sentence: `Leave it: because of ${name} only a tenth of it or less could go into a blend.`,
    };
  }
  const percent = Math.floor(share * 20) * 5;
  return {
    advice: "blend",
    share,
    sentence: `Blend it because of ${name}: at most ${percent} % of it with rain, distilled or reverse-osmosis water.`,
  };
}
