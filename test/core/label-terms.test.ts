/**
 * What the words beside a number on a label name. Shares from the CIAAW 2021 weights: NO3 holds 22.59 % N, NH4 77.65 %,
 * urea 46.65 %, SO4 33.38 % S, PO4 32.61 % P, and H3PO4 makes 72.42 % P2O5.
 */

import { describe, expect, test } from "vitest";
import { meaningOf, type TermContext } from "../../src/core/label-terms.ts";
import { tidyLine, tokensOf } from "../../src/core/label-tokens.ts";

const PLAIN: TermContext = { nitrogen: false, elemental: false, bareElements: false };

/** "Fe 1": the term and its rank; "? P2O5 P×0.3261": the readings that are asked about; else the kind. */
function said(words: string, context: Partial<TermContext> = {}): string {
  const meaning = meaningOf(tokensOf(tidyLine(words)), { ...PLAIN, ...context });
  switch (meaning.kind) {
    case "term":
      return `${meaning.term} ${meaning.rank}`;
    case "choice":
      return `? ${meaning.options.map(({ term, factor }) => `${term}${factor === 1 ? "" : `×${factor.toFixed(4)}`}`).join(" ")}`;
    case "not counted":
      return `not counted: ${meaning.named}`;
    default:
      return meaning.kind;
  }
}

describe("nitrogen", () => {
  test.each([
    ["Nitrogen", "N 3"],
    ["Total nitrogen (N)", "N 3"],
    ["N", "N 3"],
    ["Total water soluble nitrogen", "N 3"],
    ["Nitrate nitrogen", "NO3-N 3"],
    ["Nitric nitrogen (N)", "NO3-N 3"],
    ["Nitrate nitrogen (NO3)", "NO3-N 3"],
    ["NO3 as N", "NO3-N 3"],
    ["NO3-N", "NO3-N 3"],
    ["Nitrate (NO3-N)", "NO3-N 3"],
    ["Nitrogen (NO3-N)", "NO3-N 3"],
    ["Ammoniacal nitrogen", "NH4-N 3"],
    ["Ammonium nitrogen (NH4)", "NH4-N 3"],
    ["NH4-N", "NH4-N 3"],
    ["Urea nitrogen", "Urea-N 3"],
    ["Ureic nitrogen (N)", "Urea-N 3"],
    ["Slow release nitrogen", "Other-N 3"],
    ["Other water soluble nitrogen", "Other-N 3"],
  ])("%s is %s", (words, meant) => expect(said(words)).toBe(meant));

  test.each([
    ["Water soluble nitrogen", "? Other-N N"],
    ["Nitrate", "? NO3-N NO3-N×0.2259"],
    ["NO3", "? NO3-N NO3-N×0.2259"],
    ["Nitrate (NO3)", "? NO3-N NO3-N×0.2259"],
    ["Ammonium", "? NH4-N NH4-N×0.7765"],
    ["NH4", "? NH4-N NH4-N×0.7765"],
    ["Urea", "? Urea-N Urea-N×0.4665"],
  ])("%s can be read in two ways: %s", (words, meant) => expect(said(words)).toBe(meant));

  test.each([
    ["Nitrate", "NO3-N 3"],
    ["Ammoniacal", "NH4-N 3"],
    ["Urea", "Urea-N 3"],
  ])("%s below a line of nitrogen is %s", (words, meant) => expect(said(words, { nitrogen: true })).toBe(meant));

  test.each([
    ...["Nitrate and ammoniacal nitrogen", "Nitrate and ammonium", "NO3-N NH4-N", "Nitrate (NH4-N)", "NO3 and NH4"],
    ...["Nitrate nitrogen (NH4)", "Nitrogen (SO4)", "Ammonium (NO3-N)", "Nitric acid", "Nitrogen and phosphorus"],
    ...[
      "Nitrate nitrogen (NO3, NH4)",
      "Iron (NO3)",
      "Urea (NO3)",
      "Fe (NO3)",
      "Iron Fe (NO3)",
      "Slow ammonium nitrogen",
    ],
  ])("%s is no one number", (words) => expect(said(words)).toBe("unclear"));
});

describe("phosphorus, potassium, sulfur", () => {
  test.each([
    ["P2O5", "P2O5 3"],
    ["Phosphorus (P2O5)", "P2O5 3"],
    ["Available phosphate", "P2O5 3"],
    ["Available phosphate (P2O5)", "P2O5 3"],
    ["Available phosphoric acid", "P2O5 3"],
    ["Phosphorus pentoxide", "P2O5 3"],
    ["Phosphorus pentoxide (P2O5)", "P2O5 3"],
    ["Phosphate oxide", "P2O5 3"],
    ["Water soluble P2O5", "P2O5 2"],
    ["Total P2O5", "P2O5 3"],
    ["Total soluble P2O5", "P2O5 3"],
    ["Elemental phosphorus", "P 3"],
    ["Potash", "K2O 3"],
    ["Soluble potash (K2O)", "K2O 2"],
    ["Potassium (K2O)", "K2O 3"],
    ["Potassium oxide", "K2O 3"],
    ["Potassium potash", "K2O 3"],
    ["Phosphorus phosphate", "P2O5 3"],
    ["Elemental potassium (K)", "K 3"],
    ["Sulfur trioxide", "SO3 3"],
    ["SO3", "SO3 3"],
    ["Sulfur (S)", "S 3"],
    ["S", "S 3"],
    ["Sulfate sulfur (S)", "S 3"],
  ])("%s is %s", (words, meant) => expect(said(words)).toBe(meant));

  test.each([
    ["Phosphorus", "? P2O5 P"],
    ["Phosphorus (P)", "? P2O5 P"],
    ["P", "? P2O5 P"],
    ["P as P2O5", "? P2O5 P"],
    ["P2O5 elemental", "? P2O5 P"],
    ["Phosphorus pentoxide (P)", "? P2O5 P"],
    ["Phosphate", "? P2O5 P P×0.3261"],
    ["PO4", "? P P×0.3261"],
    ["Phosphoric acid", "? P2O5 P2O5×0.7242"],
    ["Potassium", "? K2O K"],
    ["Potash (K)", "? K2O K"],
    ["Sulfur", "? SO3 S"],
    ["Sulfate", "? S S×0.3338"],
    ["SO4", "? S S×0.3338"],
    ["P205", "? P2O5"],
  ])("%s can be read in more than one way, or is asked: %s", (words, meant) => expect(said(words)).toBe(meant));

  test.each([
    ...["Potassium phosphate", "Phosphate (K2O)", "Potash (P2O5)", "P2O5 K2O", "P2O5 and K", "Phosphate and potash"],
    ...["Urea phosphate", "Ammonium phosphate", "Ammonium sulfate", "Potassium sulfate", "Potassium nitrate"],
    ...["Elemental phosphorus pentoxide", "P205 (P2O5)", "P205 (SO4)", "Sulfuric acid", "SO4 PO4", "Potash nitrate"],
  ])("%s is no one number", (words) => expect(said(words)).toBe("unclear"));
});

describe("other elements", () => {
  test.each([
    ["Magnesium (Mg)", "Mg 3"],
    ["Mg", "Mg 3"],
    ["Magnesium oxide", "MgO 3"],
    ["Magnesium (MgO)", "MgO 3"],
    ["Water soluble magnesium (Mg)", "Mg 2"],
    ["Water soluble MgO", "MgO 2"],
    ["Total magnesium oxide", "MgO 3"],
    ["Calcium oxide (CaO)", "CaO 3"],
    ["Calcium (Ca)", "Ca 3"],
    ["Elemental calcium", "Ca 3"],
    ["Sodium", "Na 3"],
    ["Silicon", "Si 3"],
    ["Silizium", "Si 3"],
    ["Sodium oxide", "Na2O 3"],
    ["Iron", "Fe 3"],
    ["Iron (Fe)", "Fe 3"],
    ["Total iron", "Fe 3"],
    ["Water soluble iron", "Fe 2"],
    ["Chelated iron", "Fe 1"],
    ["Iron chelated by EDTA", "Fe 1"],
    ["Total chelated iron", "Fe 3"],
    ["Water soluble chelated iron", "Fe 1"],
    ["Available iron", "Fe 3"],
    ["Boron", "B 3"],
    ["Molybdenum (Mo)", "Mo 3"],
    ["Chloride", "Cl 3"],
  ])("%s is %s", (words, meant) => expect(said(words)).toBe(meant));

  test.each([
    ["Magnesium", "? MgO Mg"],
    ["Calcium", "? CaO Ca"],
    ["Magnesium oxide (Mg)", "? MgO Mg"],
  ])("%s can be read in two ways: %s", (words, meant) => expect(said(words)).toBe(meant));

  test("a label that counts elements says so for all of them, an American one for three", () => {
    for (const [word, symbol] of [
      ["Magnesium", "Mg"],
      ["Calcium", "Ca"],
      ["Sulfur", "S"],
    ] as const) {
      expect(said(word, { elemental: true })).toBe(`${symbol} 3`);
      expect(said(word, { bareElements: true })).toBe(`${symbol} 3`);
    }
    expect(said("Phosphorus", { elemental: true })).toBe("P 3");
    expect(said("Phosphorus", { bareElements: true })).toBe("? P2O5 P");
    expect(said("Potassium", { elemental: true })).toBe("K 3");
    expect(said("Potassium", { bareElements: true })).toBe("? K2O K");
  });

  test.each([
    "Iron oxide",
    "Calcium nitrate",
    "Calcium and magnesium",
    "CaO MgO",
    "Fe Mn",
    "Iron sulfate",
    "Iron ammonium",
    "Urea iron",
    "Slow iron",
  ])("%s is no one number", (words) => expect(said(words)).toBe("unclear"));
});

describe("words that other languages write as one", () => {
  test.each([
    ...["Gesamtstickstoff", "Gesamt-Stickstoff"].map((word) => [word, "N 3"]),
    ...["Nitratstickstoff", "Nitrat-Stickstoff", "Nitraatstikstof", "Nitraat-stikstof"].map((word) => [
      word,
      "NO3-N 3",
    ]),
    ...["Ammoniumstickstoff", "Ammonium-Stickstoff", "Ammoniakstickstoff", "Ammoniak-Stickstoff"].map((word) => [
      word,
      "NH4-N 3",
    ]),
    ...["Ammoniumstikstof", "Ammonium-stikstof", "Ammoniakale stikstof"].map((word) => [word, "NH4-N 3"]),
    ...["Carbamidstickstoff", "Carbamid-Stickstoff", "Harnstoffstickstoff", "Amidstickstoff"].map((word) => [
      word,
      "Urea-N 3",
    ]),
    ...["Ureumstikstof", "Ureum-stikstof"].map((word) => [word, "Urea-N 3"]),
    ...["Phosphorpentoxid", "Phosphor-Pentoxid", "Fosforzuuranhydride", "Fosforzuur-anhydride"].map((word) => [
      word,
      "P2O5 3",
    ]),
    ...["Kaliumoxid", "Kalium-Oxid", "Kaliumoxide"].map((word) => [word, "K2O 3"]),
    ["Magnesiumoxid", "MgO 3"],
    ["Calciumoxid", "CaO 3"],
    ["Natriumoxid", "Na2O 3"],
    ...["Schwefeltrioxid", "Schwefel-Trioxid"].map((word) => [word, "SO3 3"]),
  ] as [string, string][])("%s is %s", (words, meant) => expect(said(words)).toBe(meant));

  test.each([
    ...[
      "P2O5 soluble in neutral ammonium citrate",
      "Neutral-ammoncitratlösliches P2O5",
      "Neutral-ammoniumcitratlösliches P2O5",
    ],
    ...[
      "Neutralammoncitratlösliches P2O5",
      "In neutralem Ammoncitrat lösliches P2O5",
      "Neutral-ammonium-citrat lösliches P2O5",
    ],
    "P2O5 solubile in citrato ammonico neutro",
    // An apostrophe of either kind, or lost in copying.
    ...["d'ammonium", "d’ammonium", "d' ammonium", "d ammonium"].map(
      (words) => `P2O5 soluble dans le citrate ${words} neutre`,
    ),
    ...["d’ammonio", "d' ammonio", "d ammonio"].map((words) => `P2O5 solubile in citrato ${words} neutro`),
    ...[
      "P2O5 solubile in citrato d'ammonio neutro",
      "P2O5 soluble en citrato amónico neutro",
      "P2O5 soluble en citrato de amonio neutro",
    ],
  ])("%s is the phosphate that plants can use", (words) => expect(said(words)).toBe("P2O5 3"));
});

describe("words that name nothing that is counted", () => {
  test.each([...["Cobalt", "Kobalt", "Cobalto", "Nickel", "Selenium", "Selen", "Iodine", "Co", "Ni", "Se"]])(
    "%s is told and left",
    (word) => expect(said(`Total ${word}`)).toBe(`not counted: Total`.replace("Total", word)),
  );

  test("unless something else stands beside it", () => {
    for (const words of ["Cobalt and iron", "Cobalt xyzzy", "Nickel sulfate", "Cobalt (Fe)"]) {
      expect(said(words), words).toBe("unclear");
    }
  });

  test("none at all, or an unknown one", () => {
    for (const words of ["total", "guaranteed minimum analysis", "", "of the"]) expect(said(words), words).toBe("none");
    for (const words of ["xyzzy", "Iron xyzzy", "xyzzy nitrogen"]) expect(said(words), words).toBe("unclear");
  });
});

test("what is asked names the words as they were printed, without brackets", () => {
  const named = (words: string): string => {
    const meaning = meaningOf(tokensOf(tidyLine(words)), PLAIN);
    return "named" in meaning ? meaning.named : "";
  };
  expect(named("Phosphorus (P)")).toBe("Phosphorus P");
  expect(named("Nitrate (NO3)")).toBe("Nitrate NO3");
  expect(named("Phosphate")).toBe("Phosphate");
  expect(named("P205")).toBe("P205");
});

test("a choice says each reading in words", () => {
  const words = (of: string): string[] => {
    const meaning = meaningOf(tokensOf(tidyLine(of)), PLAIN);
    return meaning.kind === "choice" ? meaning.options.map((option) => option.words) : [];
  };
  for (const [of, parts] of [
    ["Phosphorus", ["P2O5", "element P"]],
    ["Nitrate", ["nitrogen", "NO3"]],
    ["Ammonium", ["nitrogen", "NH4"]],
    ["Urea", ["nitrogen", "urea"]],
    ["Sulfate", ["sulfur", "SO4"]],
    ["PO4", ["phosphorus", "PO4"]],
    ["Phosphate", ["P2O5", "element P", "PO4"]],
    ["Phosphoric acid", ["P2O5", "H3PO4"]],
    ["Water soluble nitrogen", ["further", "all of the nitrogen"]],
    ["P205", ["P2O5, with the letter O"]],
  ] as const) {
    const said = words(of);
    expect(said).toHaveLength(parts.length);
    for (const [at, part] of parts.entries()) expect(said[at]).toContain(part);
  }
});
