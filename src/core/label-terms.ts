/** What the words before or after a number on a label say it is a number of. */

import type { LabelTerm } from "./analysis.ts";
import type { ElementSymbol } from "./elements.ts";
import {
  asItIs,
  ION_READINGS,
  OXIDE_OF,
  oxideOrElement,
  PHOSPHORIC_ACID,
  type Reading,
  UREA,
} from "./label-readings.ts";
import type { Ion, Token } from "./label-tokens.ts";
import type { Marker } from "./label-words.ts";
import { OXIDES, oxideElement } from "./oxides.ts";

export type Meaning =
  /** `rank`: 3 the whole, 2 the soluble part of it, 1 the chelated part. */
  | { readonly kind: "term"; readonly term: LabelTerm; readonly rank: 1 | 2 | 3 }
  | { readonly kind: "choice"; readonly named: string; readonly options: readonly Reading[] }
  | { readonly kind: "not counted"; readonly named: string }
  | { readonly kind: "unclear"; readonly named: string }
  | { readonly kind: "none" };

export interface TermContext {
  /** The line belongs to a line of total nitrogen: "of which 6 % nitrate". */
  readonly nitrogen: boolean;
  /** The label says that its numbers are elements. */
  readonly elemental: boolean;
  /** Calcium, magnesium and sulfur without a formula are elements: so on labels that say "available phosphate" or "soluble potash" [US state fertilizer law]. */
  readonly bareElements: boolean;
}

const N_FORM = { nitrate: "NO3-N", ammonium: "NH4-N", urea: "Urea-N", slow: "Other-N" } as const;
const FORMS = ["nitrate", "ammonium", "urea", "slow"] as const;

interface Found {
  readonly elements: ReadonlySet<ElementSymbol>;
  readonly terms: ReadonlySet<LabelTerm>;
  readonly ions: ReadonlySet<Ion>;
  readonly markers: ReadonlySet<Marker>;
  readonly named: string;
  readonly unknown: boolean;
  /** An element that is not counted here, as it was printed. */
  readonly notCounted: string | null;
  readonly misprint: { readonly term: LabelTerm; readonly text: string } | null;
}

function gather(run: readonly Token[]): Found {
  const elements = new Set<ElementSymbol>();
  const terms = new Set<LabelTerm>();
  const ions = new Set<Ion>();
  const markers = new Set<Marker>();
  const words: string[] = [];
  let unknown = false;
  let notCounted: string | null = null;
  let misprint: Found["misprint"] = null;
  for (const token of run) {
    switch (token.kind) {
      case "element":
        elements.add(token.symbol);
        break;
      case "formula":
        terms.add(token.term);
        break;
      case "ion":
        ions.add(token.ion);
        break;
      case "marker":
        markers.add(token.marker);
        break;
      case "misprint":
        misprint = token;
        break;
      case "unknown":
        unknown = true;
        break;
      case "not counted":
        notCounted ??= token.text;
        break;
    }
    if (token.kind === "ion") words.push(token.ion);
    else if ("text" in token && token.kind !== "open" && token.kind !== "close") words.push(token.text);
  }
  return { elements, terms, ions, markers, named: words.join(" "), unknown, notCounted, misprint };
}

function rankOf({ markers }: Found): 1 | 2 | 3 {
  if (markers.has("total") || markers.has("available")) return 3;
  if (markers.has("chelated")) return 1;
  return markers.has("soluble") ? 2 : 3;
}

function nitrogenOf(found: Found): Meaning {
  const forms = FORMS.filter((form) => found.markers.has(form));
  // "Other" and "slow" may stand beside "soluble", but two forms in one number cannot be told apart.
  if (forms.length > 1) return { kind: "unclear", named: found.named };
  const [form] = forms;
  if (form !== undefined) return { kind: "term", term: N_FORM[form], rank: 3 };
  if (found.markers.has("soluble") && !found.markers.has("total")) {
    const options = [asItIs("Other-N", "a further form of nitrogen"), asItIs("N", "all of the nitrogen")];
    return { kind: "choice", named: found.named, options };
  }
  return { kind: "term", term: "N", rank: 3 };
}

/** The element that a marker is about; "potassium phosphate" and "calcium nitrate" are substances, not guarantees. */
const MARKER_OWNER: readonly (readonly [marker: Marker, owner: ElementSymbol])[] = [
  ["phosphate", "P"],
  ["potash", "K"],
  ["sulfate", "S"],
  ["nitrate", "N"],
  ["ammonium", "N"],
  ["urea", "N"],
  ["slow", "N"],
];

function belongsTo(owner: ElementSymbol, { markers }: Found): boolean {
  return MARKER_OWNER.every(([marker, one]) => one === owner || !markers.has(marker));
}

function byElement(symbol: ElementSymbol, written: boolean, found: Found, context: TermContext): Meaning {
  const { markers, named } = found;
  const rank = rankOf(found);
  if (!belongsTo(symbol, found)) return { kind: "unclear", named };
  if (symbol === "N") return nitrogenOf(found);
  const oxide = OXIDE_OF.get(symbol);
  if (oxide === undefined)
    return markers.has("oxide") ? { kind: "unclear", named } : { kind: "term", term: symbol, rank };
  const saysOxide = markers.has("oxide") || markers.has("phosphate") || markers.has("potash");
  const saysElement = markers.has("elemental");
  if (saysOxide && saysElement) return { kind: "unclear", named };
  // "Magnesium oxide (Mg)" says both.
  if (saysOxide)
    return written ? { kind: "choice", named, options: oxideOrElement(symbol) } : { kind: "term", term: oxide, rank };
  if (saysElement || context.elemental) return { kind: "term", term: symbol, rank };
  if (symbol === "P" || symbol === "K") return { kind: "choice", named, options: oxideOrElement(symbol) };
  const plain = written || context.bareElements || symbol === "Na" || symbol === "Si";
  return plain ? { kind: "term", term: symbol, rank } : { kind: "choice", named, options: oxideOrElement(symbol) };
}

const elementOfTerm = (term: LabelTerm): ElementSymbol | null => {
  if (term.endsWith("-N")) return "N";
  for (const oxide of OXIDES) if (oxide === term) return oxideElement(oxide);
  return term as ElementSymbol;
};

function byFormula(found: Found, context: TermContext): Meaning {
  const { terms, elements, ions, markers, named } = found;
  const owners = new Set<ElementSymbol | null>([...terms].map(elementOfTerm));
  for (const element of elements) owners.add(element);
  if (owners.size > 1) return { kind: "unclear", named };
  const special = [...terms].filter((term) => term !== elementOfTerm(term));
  if (special.length > 1 || ions.size > 1) return { kind: "unclear", named };
  const [term] = special;
  const [owner] = owners;
  if (term === undefined) return byElement(owner as ElementSymbol, true, found, context);
  if (!belongsTo(owner as ElementSymbol, found)) return { kind: "unclear", named };
  if (owner === "N") {
    const form = FORMS.filter((one) => markers.has(one));
    if (form.some((one) => N_FORM[one] !== term)) return { kind: "unclear", named };
    return { kind: "term", term, rank: 3 };
  }
  // "P as P2O5" and "P2O5 as P" cannot be told apart by their words; "Phosphorus (P2O5)" can.
  if (terms.size > 1 || markers.has("elemental")) {
    return { kind: "choice", named, options: oxideOrElement(owner as ElementSymbol) };
  }
  return { kind: "term", term, rank: rankOf(found) };
}

/** What a run of words names. Never guesses: two readings are a choice, unknown words make it unclear. */
export function meaningOf(run: readonly Token[], context: TermContext): Meaning {
  const found = gather(run);
  const { elements, terms, ions, markers, named, misprint } = found;
  const isPhosphate = markers.has("phosphate") && (markers.has("available") || markers.has("oxide"));
  const acid = /\bacid|\bsaure|saure\b/i.test(named);
  const form = (["nitrate", "ammonium", "urea"] as const).filter((one) => markers.has(one));
  const names =
    elements.size + terms.size + ions.size > 0 ||
    misprint !== null ||
    markers.has("phosphate") ||
    markers.has("potash") ||
    markers.has("sulfate") ||
    form.length > 0;
  if (found.notCounted !== null) {
    return names || found.unknown ? { kind: "unclear", named } : { kind: "not counted", named: found.notCounted };
  }
  if (!names) return found.unknown ? { kind: "unclear", named } : { kind: "none" };
  if (found.unknown) return { kind: "unclear", named };
  if (misprint !== null) {
    if (terms.size + ions.size > 0) return { kind: "unclear", named };
    return { kind: "choice", named, options: [asItIs(misprint.term, `${misprint.term}, with the letter O`)] };
  }
  const [ion, otherIon] = ions;
  if (ion !== undefined) {
    // "Nitrate nitrogen (NO3)" is nitrogen; "Nitrate (NO3)" is not said to be.
    const nitrogen = elements.has("N") || terms.has("N");
    const term = ion === "NO3" ? "NO3-N" : ion === "NH4" ? "NH4-N" : null;
    const fits = otherIon === undefined && form.every((one) => N_FORM[one] === term);
    if (nitrogen && term !== null && fits) return { kind: "term", term, rank: 3 };
    if (elements.size + terms.size > 0 || !fits) return { kind: "unclear", named };
    return { kind: "choice", named, options: ION_READINGS[ion] };
  }
  if (terms.size > 0) return byFormula(found, context);
  if (elements.size > 1) return { kind: "unclear", named };
  const [element] = elements;
  if (element !== undefined) return byElement(element, false, found, context);
  // "Urea phosphate", "phosphate and potash": one number for two things.
  const things = form.length + (["phosphate", "potash", "sulfate"] as const).filter((one) => markers.has(one)).length;
  if (things > 1) return { kind: "unclear", named };
  const [only] = form;
  // An acid by its name is a substance, not nitrogen.
  if (only !== undefined && acid) return { kind: "unclear", named };
  if (only !== undefined) {
    if (context.nitrogen) return { kind: "term", term: N_FORM[only], rank: 3 };
    const options = only === "nitrate" ? ION_READINGS.NO3 : only === "ammonium" ? ION_READINGS.NH4 : UREA;
    return { kind: "choice", named, options };
  }
  if (markers.has("potash")) return { kind: "term", term: "K2O", rank: 3 };
  if (isPhosphate) return { kind: "term", term: "P2O5", rank: 3 };
  // Old labels call P2O5 an acid, technical ones mean H3PO4.
  if (markers.has("phosphate") && acid) return { kind: "choice", named, options: PHOSPHORIC_ACID };
  if (markers.has("phosphate")) {
    return { kind: "choice", named, options: [...oxideOrElement("P"), ...ION_READINGS.PO4.slice(1)] };
  }
  return { kind: "choice", named, options: ION_READINGS.SO4 };
}
