/** What may fall out of a solution, most at risk first, and how to order or split the additions. */

import type { Amounts } from "./elements.ts";
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

export interface NamedBringing {
  readonly name: string;
  /** mg/L each brings to the finished solution. */
  readonly bringsMgL: Amounts;
}

/**
 * In which order to add feeds, and whether to keep some apart as concentrates: calcium away from sulfate and phosphate
 * (DPIRD Western Australia for concentrates; the order in a full tank is common practice, no source). Acid goes into
 * the water first, as it takes the alkalinity that would hold calcium. Feeds of trace elements alone come last.
 */
export function mixingOrder(feeds: readonly NamedBringing[]): { steps: string[]; apart: string | null } {
  const brings = (feed: NamedBringing, ...symbols: (keyof Amounts)[]) =>
    symbols.some((symbol) => (feed.bringsMgL[symbol] ?? 0) > 1);
  const calcium = feeds.filter((feed) => brings(feed, "Ca"));
  const others = feeds.filter((feed) => !calcium.includes(feed));
  const clash = others.filter((feed) => brings(feed, "S", "P"));
  const macro = others.filter((feed) => brings(feed, "N", "P", "K", "Mg", "S"));
  const traces = others.filter((feed) => !macro.includes(feed));
  const names = (some: readonly NamedBringing[]) => some.map((feed) => feed.name).join(", ");
  const steps = ["Fill in nearly all the water, then any acid, and stir."];
  if (macro.length > 0) steps.push(`Dissolve ${names(macro)}, one after the other, stirring until it is clear.`);
  if (calcium.length > 0)
    steps.push(`Add ${names(calcium)}${macro.length > 0 ? " last of the main feeds, well diluted" : ""}.`);
  if (traces.length > 0) steps.push(`Add ${names(traces)}.`);
  steps.push("Fill up, stir, and measure EC and pH.");
  const apart =
    calcium.length > 0 && clash.length > 0
      ? `Never mix ${names(calcium)} with ${names(clash)} undiluted, and keep them in separate bottles as concentrates: calcium falls out with sulfate and phosphate.`
      : null;
  return { steps, apart };
}
