/** Acids and bases as they are sold: strengths, densities, what a mole gives and what it adds. */

import { ATOMIC_WEIGHTS, type ElementSymbol } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { constantsAt, speciesIndex } from "./reactions.ts";
import { sayGiven } from "./saying.ts";
import type { Totals } from "./speciation.ts";

type Kind = "acid" | "base";

interface Substance {
  readonly name: string;
  readonly pattern: RegExp;
  readonly kind: Kind;
  /** g/mol. */
  readonly weight: number;
  readonly adds: { readonly [part in keyof Totals]?: number };
  /** Moles of carbonate a mole brings. */
  readonly carbon: number;
  /** Protons a mole brings, counted from PO4-3, SO4-2, citrate and CO2. */
  readonly protons: number;
  readonly element: ElementSymbol | null;
  /** Percent w/w and g/mL at 20 °C, ends included; null: only sold and dosed as a solid. */
  readonly density: readonly (readonly [percent: number, gPerMl: number])[] | null;
  /** Sold as a solid where no strength is given. */
  readonly solid: boolean;
}

const { H, C, N, O, P, S, K } = ATOMIC_WEIGHTS;
const CITRIC = 6 * C + 8 * H + 7 * O;
const WATER_AT_20 = [0, 0.9982] as const;

const SUBSTANCES: readonly Substance[] = [
  {
    name: "phosphoric acid",
    pattern: /phosphoric|h3po4/,
    kind: "acid",
    weight: 3 * H + P + 4 * O,
    adds: { PO4: 1 },
    carbon: 0,
    protons: 3,
    element: "P",
    density: [
      WATER_AT_20,
      [10, 1.0532],
      [20, 1.1134],
      [30, 1.1805],
      [40, 1.254],
      [50, 1.335],
      [60, 1.426],
      [70, 1.526],
      [75, 1.579],
      [80, 1.633],
      [85, 1.689],
      [90, 1.746],
    ],
    solid: false,
  },
  {
    name: "nitric acid",
    pattern: /nitric|hno3/,
    kind: "acid",
    weight: H + N + 3 * O,
    adds: { NO3: 1 },
    carbon: 0,
    protons: 1,
    element: "N",
    density: [
      WATER_AT_20,
      [10, 1.0543],
      [20, 1.115],
      [30, 1.18],
      [40, 1.2463],
      [50, 1.31],
      [60, 1.3667],
      [65, 1.3913],
      [70, 1.4134],
    ],
    solid: false,
  },
  {
    name: "sulfuric acid",
    pattern: /sul(f|ph)uric|h2so4/,
    kind: "acid",
    weight: 2 * H + S + 4 * O,
    adds: { SO4: 1 },
    carbon: 0,
    protons: 2,
    element: "S",
    density: [
      WATER_AT_20,
      [10, 1.0661],
      [20, 1.1394],
      [30, 1.2185],
      [40, 1.3028],
      [50, 1.3951],
      [60, 1.4983],
      [70, 1.6105],
      [80, 1.7272],
      [85, 1.7786],
      [90, 1.8144],
      [95, 1.8337],
      [98, 1.8361],
    ],
    solid: false,
  },
  {
    name: "citric acid monohydrate",
    pattern: /citric.*hydrate/,
    kind: "acid",
    weight: CITRIC + 2 * H + O,
    adds: { Cit: 1 },
    carbon: 0,
    protons: 3,
    element: null,
    density: null,
    solid: true,
  },
  {
    name: "citric acid",
    pattern: /citric/,
    kind: "acid",
    weight: CITRIC,
    adds: { Cit: 1 },
    carbon: 0,
    protons: 3,
    element: null,
    density: [WATER_AT_20, [10, 1.0402], [20, 1.0858], [30, 1.1346], [50, 1.2428]],
    solid: true,
  },
  {
    name: "potassium bicarbonate",
    pattern: /potassium bicarbonate|potassium hydrogen carbonate|khco3/,
    kind: "base",
    weight: K + H + C + 3 * O,
    adds: { K: 1 },
    carbon: 1,
    protons: -1,
    element: "K",
    density: null,
    solid: true,
  },
  {
    name: "potassium hydroxide",
    pattern: /potassium hydroxide|\bkoh\b/,
    kind: "base",
    weight: K + O + H,
    adds: { K: 1 },
    carbon: 0,
    protons: -1,
    element: "K",
    density: [WATER_AT_20, [10, 1.0904], [20, 1.1872], [30, 1.2892], [40, 1.3972], [50, 1.5123]],
    solid: true,
  },
];

export interface Acid {
  readonly name: string;
  readonly kind: Kind;
  /** Percent by weight; 100 for a pure solid. */
  readonly percent: number;
  /** Dosed in g, otherwise in mL. */
  readonly unit: "mL" | "g";
  /** Moles in one mL or one g. */
  readonly molPerUnit: number;
  readonly adds: Substance["adds"];
  readonly carbon: number;
  readonly protons: number;
  readonly element: ElementSymbol | null;
}

const ACCEPTED =
  "phosphoric 85%, nitric 67%, sulfuric 95%, citric, citric monohydrate, potassium bicarbonate or potassium hydroxide, with any strength in percent by weight";

/**
 * Reads "phosphoric 85%", "Nitric acid 67 %", "H2SO4 95%", "citric" (anhydrous powder), "citric 50%" (a solution),
 * "potassium hydroxide 45%". "w/v" after the percent takes it as grams in 100 mL. Throws BadInput for an unknown
 * substance, a liquid without strength, a strength no such acid has, or a strength in normals: tables in normals count
 * three protons for phosphoric acid, of which only about one is given at the pH plants are fed.
 */
export function parseAcid(text: string): Acid {
  const typed = text.trim();
  const key = typed.toLowerCase();
  const substance = SUBSTANCES.find((one) => one.pattern.test(key));
  if (substance === undefined)
    throw new BadInput("unknown-acid", `"${typed}" is no acid known here. Give ${ACCEPTED}.`);
  const { name, density, solid } = substance;
  const rest = key.replace(/h3po4|hno3|h2so4|khco3/g, "");
  const found = /(\d+(?:[.,]\d+)?)\s*%\s*(w\/v)?/.exec(rest);
  if (found === null && /\d/.test(rest)) {
    throw new BadInput(
      "acid-strength",
      `The strength in "${typed}" is not in percent. Write it like "${name} 75%"; a strength in normals counts protons that the acid does not give at a plant's pH.`,
    );
  }
  const pure = {
    name,
    kind: substance.kind,
    adds: substance.adds,
    carbon: substance.carbon,
    protons: substance.protons,
  };
  const shared = { ...pure, element: substance.element };
  if (found === null) {
    if (!solid)
      throw new BadInput(
        "acid-strength",
        `"${typed}" needs its strength, as printed on the bottle. Write it like "${name} ${density?.[density.length - 1]?.[0]}%".`,
      );
    return { ...shared, percent: 100, unit: "g", molPerUnit: 1 / substance.weight };
  }
  const percent = Number((found[1] ?? "").replace(",", "."));
  const most = density?.[density.length - 1]?.[0] ?? 100;
  if (solid && (percent > most || density === null)) {
    if (!(percent > 0 && percent <= 100)) throw strengthOutside(typed, name, 100);
    return { ...shared, percent, unit: "g", molPerUnit: percent / 100 / substance.weight };
  }
  if (!(percent > 0 && percent <= most) || density === null) throw strengthOutside(typed, name, most);
  const gPerMl = found[2] === undefined ? (percent / 100) * interpolate(density, percent) : percent / 100;
  return { ...shared, percent, unit: "mL", molPerUnit: gPerMl / substance.weight };
}

function strengthOutside(typed: string, name: string, most: number): BadInput {
  return new BadInput(
    "acid-strength",
    `The strength in "${typed}" is outside what ${name} comes in. Give a percent above 0, up to ${sayGiven(most)}.`,
  );
}

/** Density at 20 °C in g/mL of a solution of `percent` by weight. */
export function acidDensity(name: string, percent: number): number | null {
  const table = SUBSTANCES.find((one) => one.name === name)?.density;
  return table === null || table === undefined ? null : interpolate(table, percent);
}

function interpolate(table: readonly (readonly [number, number])[], percent: number): number {
  for (let i = 1; i < table.length; i++) {
    const [p0, d0] = table[i - 1] ?? WATER_AT_20;
    const [p1, d1] = table[i] ?? WATER_AT_20;
    if (percent <= p1) return d0 + ((d1 - d0) * (percent - p0)) / (p1 - p0);
  }
  return table[table.length - 1]?.[1] ?? 1;
}

const FORMS: Readonly<Record<string, readonly string[]>> = {
  PO4: ["PO4-3", "HPO4-2", "H2PO4-", "H3PO4"],
  Cit: ["Cit-3", "HCit-2", "H2Cit-", "H3Cit"],
};

/**
 * Equivalents of acid a mole gives at `pH`, 25 °C, activity coefficients 1: 1.04 for phosphoric and 2.12 for citric
 * acid at pH 5.8, where handbooks in normals count three. Dose itself comes from the full equilibrium.
 */
export function equivalentsPerMole(acid: Acid, pH: number): number {
  const forms = acid.adds.PO4 === undefined ? (acid.adds.Cit === undefined ? undefined : FORMS.Cit) : FORMS.PO4;
  if (forms === undefined) return acid.protons;
  const { lnK } = constantsAt(25);
  let all = 0;
  let held = 0;
  forms.forEach((name, protons) => {
    const weight = Math.exp((lnK[speciesIndex(name)] ?? 0) - protons * pH * Math.LN10);
    all += weight;
    held += protons * weight;
  });
  return acid.protons - held / all;
}

/*
 * Sources of the densities at 20 °C, g/mL: Perry's Chemical Engineers' Handbook and CRC Handbook, concentrative
 * properties of aqueous solutions; 10–50 % and citric acid to 30 % compared with a public copy of the CRC table, nitric
 * acid also at 68 %, the rest from memory; potassium hydroxide from Laliberté & Cooper 2004, J. Chem. Eng. Data 49,
 * 1141. All but citric acid agree with that paper's model within 0.4 % where it holds (test/reference).
 * Citric acid 50 %: memory. Straight lines between the points are at most 0.1 % off.
 */
