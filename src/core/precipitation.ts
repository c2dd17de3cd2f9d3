/** What may fall out of a solution, most at risk first. */

import { type SaturationIndices, type Solid, saturationIndices } from "./saturation.ts";
import { type Elements, solutionAt } from "./solution.ts";
import type { State } from "./speciation.ts";

export interface Risk {
  readonly solid: Solid;
  /** log10 of ion product over solubility product. */
  readonly index: number;
  /** A whole sentence, without the final stop where several are joined. */
  readonly words: string;
}

const WORDS: Readonly<Record<Solid, string>> = {
  brushite: "calcium phosphate (brushite)",
  gypsum: "calcium sulfate (gypsum)",
  calcite: "calcium carbonate (calcite)",
  struvite: "magnesium ammonium phosphate (struvite)",
};
const CURE: Readonly<Record<Solid, string>> = {
  brushite: "lower the pH or the phosphate, or dilute",
  gypsum: "dilute, or use less sulfate",
  calcite: "lower the pH, or use a softer water",
  struvite: "lower the pH, or use less ammonium",
};
/** Within this of saturation the constants themselves leave it open (0.03 to 0.06), and a day's drift of pH decides. */
const CLOSE = 0.1;

/**
 * Solids that are saturated, or within 0.1 of it, the highest index first. Indices are for the four solids of SOLIDS;
 * brushite stands for the calcium phosphates that form first, others are less soluble but slow.
 */
export function risks(state: State): Risk[] {
  const found: Risk[] = [];
  const indices: SaturationIndices = saturationIndices(state);
  for (const solid of Object.keys(indices) as Solid[]) {
    const index = indices[solid];
    if (index === null || index < -CLOSE) continue;
    const words =
      index > CLOSE
        ? `${WORDS[solid]} may fall out: ${excess(index)} too much at pH ${state.pH.toFixed(1)}; ${CURE[solid]}`
        : `${WORDS[solid]} is just at its limit at pH ${state.pH.toFixed(1)}; ${CURE[solid]}`;
    found.push({ solid, index, words });
  }
  return found.sort((a, b) => b.index - a.index);
}

/** An index of 0.5 is 3.2 times the ion product that stays dissolved. */
function excess(index: number): string {
  const times = 10 ** index;
  return `${times < 10 ? times.toFixed(1) : Math.round(times)} times`;
}

/** The text of FEED_RISK: "" or the risks joined, most at risk first. */
export function riskText(elements: Elements, { pH = 6, tempC = 25 }): string {
  const said = risks(solutionAt(elements, { pH, tempC })).map((risk) => risk.words);
  return said.length === 0 ? "" : `${upperFirst(said.join(". "))}.`;
}

function upperFirst(text: string): string {
  return text.replace(/(^|\. )([a-z])/g, (_, before: string, letter: string) => before + letter.toUpperCase());
}
