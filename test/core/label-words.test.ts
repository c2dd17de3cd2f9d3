/**
 * The names that a printed analysis may give, and what each must be read as. The nutrients, their forms and solubilities
 * are those of Regulation (EU) 2019/1009, Annex III, in six languages, and of the AAPFCO Uniform State Fertilizer Bill;
 * both from memory.
 */

import { describe, expect, test } from "vitest";
import { meaningOf } from "../../src/core/label-terms.ts";
import { readLabelText } from "../../src/core/label-text.ts";
import { tidyLine, tokensOf } from "../../src/core/label-tokens.ts";
import { ELEMENT_WORDS, HEADING_WORDS, MARKER_WORDS, NOT_COUNTED } from "../../src/core/label-words.ts";

/** "Fe 1": the nutrient and its rank (3 the whole, 2 the soluble part, 1 the chelated); "? CaO Ca": what is asked. */
function said(words: string): string {
  const meaning = meaningOf(tokensOf(tidyLine(words)), { nitrogen: false, elemental: false, bareElements: false });
  if (meaning.kind === "term") return `${meaning.term} ${meaning.rank}`;
  if (meaning.kind !== "choice") return meaning.kind;
  return `? ${[...new Set(meaning.options.map(({ term }) => term))].join(" ")}`;
}

/** Everything that the cases below print, so that no word stands in the tables without one. */
const printed: string[] = [];
const cases = (table: Readonly<Record<string, readonly string[]>>): [string, string][] => {
  const rows = Object.entries(table).flatMap(([meant, texts]) => texts.map((text): [string, string] => [text, meant]));
  printed.push(...rows.map(([text]) => text));
  return rows;
};
/** Words apart, each a case. */
const each = (words: string): string[] => words.split(" ");

describe("elements by name alone, in English, German, French, Spanish, Italian and Dutch", () => {
  test.each(
    cases({
      "N 3": each("Nitrogen Stickstoff Azote Nitrógeno Azoto Stikstof"),
      "? P2O5 P": each("Phosphorus Phosphor Phosphore Fósforo Fosforo Fosfor"),
      "? K2O K": each("Potassium Kalium Potasio Potassio"),
      "? CaO Ca": each("Calcium Kalzium Calcio"),
      "? MgO Mg": each("Magnesium Magnésium Magnesio"),
      "? SO3 S": each("Sulfur Sulphur Schwefel Soufre Azufre Zolfo Zwavel"),
      "Fe 3": each("Iron Eisen Fer Hierro Ferro IJzer"),
      "Mn 3": each("Manganese Mangan Manganèse Manganeso Mangaan"),
      "Zn 3": each("Zinc Zink Cinc Zinco"),
      "B 3": each("Boron Bor Bore Boro Borium Boor"),
      "Cu 3": each("Copper Kupfer Cuivre Cobre Rame Koper"),
      "Mo 3": each("Molybdenum Molybdän Molybdène Molibdeno Molybdeen"),
      "Si 3": each("Silicon Silizium Silicium Silicio"),
      "Na 3": each("Sodium Natrium Sodio"),
      "Cl 3": each("Chlorine Chloride Chlor Chlorid Chlore Chlorure Cloro Cloruro Chloor"),
    }),
  )("%s is %s", (words, meant) => expect(said(words)).toBe(meant));
});

describe("nitrogen and its forms", () => {
  test.each(
    cases({
      "N 3": [
        ...["Total nitrogen (N)", "Gesamtstickstoff (N)", "Gesamt-N", "Gesamter Stickstoff", "Azote (N) total"],
        ...["Nitrógeno total", "Azoto totale", "Totaal stikstof", "Totale stikstof"],
      ],
      "NO3-N 3": [
        ...["Nitrate nitrogen", "Nitrogen in nitrate form", "Nitric nitrogen", "Nitratstickstoff", "Nitrat-N"],
        ...["Azote nitrique", "Azote sous forme nitrique", "Nitrógeno nítrico", "Nitrógeno en forma nítrica"],
        ...["Azoto nitrico", "Azoto in forma nitrica", "Azoto nitrato", "Nitraatstikstof", "Stikstof als nitraat"],
      ],
      "NH4-N 3": [
        ...["Ammoniacal nitrogen", "Ammonium nitrogen", "Ammonia nitrogen", "Ammoniumstickstoff", "Ammoniak-N"],
        ...["Ammon-N", "Azote ammoniacal", "Azote sous forme ammoniacale", "Azote (ammoniac)", "Nitrógeno amoniacal"],
        ...["Azoto ammoniacale", "Ammoniakale stikstof", "Ammoniumstikstof"],
      ],
      "Urea-N 3": [
        ...["Urea nitrogen", "Ureic nitrogen", "Amidic nitrogen", "Carbamidstickstoff", "Carbamid-N", "Harnstoff-N"],
        ...["Azote uréique", "Azote de l'urée", "Azote carbamide", "Nitrógeno ureico", "Nitrógeno en forma ureica"],
        ...["Azoto ureico", "Ureumstikstof", "Stikstof als ureum"],
      ],
      "Other-N 3": [
        ...["Other water soluble nitrogen", "Slow release nitrogen", "Slowly released nitrogen"],
        ...["Controlled release nitrogen", "Water insoluble nitrogen"],
      ],
    }),
  )("%s is %s", (words, meant) => expect(said(words)).toBe(meant));
});

describe("phosphate, potash and other oxides, by name alone", () => {
  test.each(
    cases({
      "P2O5 3": [
        ...["Phosphorus pentoxide", "Available phosphate", "Phosphorpentoxid", "Phosphat-Anhydrid"],
        ...["Anhydride phosphorique", "Pentoxyde de phosphore", "Pentóxido de fósforo", "Anhídrido fosfórico"],
        ...["Anidride fosforica", "Pentossido di fosforo", "Fosforpentoxide", "Fosforzuuranhydride"],
      ],
      "K2O 3": [
        ...["Potash", "Potassium oxide", "Kaliumoxid", "Kali", "Potasse", "Oxyde de potassium", "Potasa"],
        ...["Óxido de potasio", "Potassa", "Ossido di potassio", "Kaliumoxide"],
      ],
      "CaO 3": ["Calcium oxide", "Calciumoxid", "Oxyde de calcium", "Óxido de calcio", "Ossido di calcio"],
      "MgO 3": [
        ...["Magnesium oxide", "Magnesiumoxid", "Gesamt-Magnesiumoxid", "Gesamtmagnesiumoxid", "Oxyde de magnésium"],
        ...["Óxido de magnesio", "Ossido di magnesio", "Magnesiumoxide"],
      ],
      "SO3 3": [
        ...["Sulphur trioxide", "Schwefeltrioxid", "Gesamtschwefel (SO3)", "Trioxyde de soufre", "Trióxido de azufre"],
        ...[
          "Anhydride sulfurique",
          "Anhídrido sulfúrico",
          "Anidride solforica",
          "Triossido di zolfo",
          "Zwaveltrioxide",
        ],
      ],
      "Na2O 3": ["Sodium oxide", "Natriumoxid", "Oxyde de sodium", "Óxido de sodio", "Ossido di sodio"],
      "SiO2 3": [
        ...["Silicon dioxide", "Siliciumdioxid", "Dioxyde de silicium"],
        ...["Dióxido de silicio", "Diossido di silicio", "Siliciumdioxide"],
      ],
    }),
  )("%s is %s", (words, meant) => expect(said(words)).toBe(meant));

  test.each(
    cases({
      // Old labels call P2O5 an acid.
      "? P2O5": ["Phosphoric acid", "Phosphorsäure", "Acide phosphorique", "Ácido fosfórico"],
      "? P2O5 P": each("Phosphate Phosphat Fosfato Fosfaat"),
      "? S": each("Sulfate Sulphate Sulfat Solfato Sulfato Sulfaat"),
      "? Other-N N": ["Water soluble nitrogen"],
    }),
  )("%s is asked about: %s", (words, meant) => expect(said(words)).toBe(meant));
});

describe("the soluble and the chelated part", () => {
  test.each(
    cases({
      "P2O5 3": [
        ...["P2O5 soluble in neutral ammonium citrate and water", "P2O5 assimilable", "P2O5 asimilable"],
        ...["neutral-ammoncitratlösliches und wasserlösliches Phosphat (P2O5)", "Available phosphate (P2O5)"],
        ...["Anhydride phosphorique (P2O5) soluble dans le citrate d'ammonium neutre et dans l'eau"],
        ...["Pentóxido de fósforo (P2O5) soluble en citrato amónico neutro y agua"],
        ...["Anidride fosforica (P2O5) solubile in citrato ammonico neutro e in acqua"],
        ...["Fosforpentoxide (P2O5) oplosbaar in neutraal ammoniumcitraat en water"],
      ],
      "P2O5 2": [
        ...["Water-soluble phosphorus pentoxide (P2O5)", "Wasserlösliches Phosphat (P2O5)"],
        ...[
          "Wasserlösliche Phosphorsäure (P2O5)",
          "In Wasser lösliche Phosphorsäure (P2O5)",
          "Pentóxido de fósforo (P2O5) soluble en agua",
        ],
        ...["Anidride fosforica (P2O5) solubile in acqua", "In water oplosbaar fosforpentoxide (P2O5)"],
      ],
      "K2O 2": [
        ...["Soluble potash (K2O)", "Wasserlösliches Kaliumoxid (K2O)", "Oxyde de potassium (K2O) soluble dans l'eau"],
        ...["Óxido de potasio (K2O) soluble en agua", "Ossido di potassio (K2O) solubile in acqua"],
        ...["Wateroplosbaar kaliumoxide (K2O)"],
      ],
      "S 2": ["Wasserlöslicher Schwefel (S)", "In Wasser löslicher Schwefel (S)"],
      "MgO 2": ["In Wasser lösliches Magnesiumoxid (MgO)", "MgO in Wasser löslich"],
      "B 2": ["Bore (B) soluble dans l'eau", "Bore hydrosoluble", "Bor wasserlöslich", "In Wasser lösliches Bor"],
      "Fe 2": ["Iron, water soluble", "Oligo-éléments solubles: fer"],
      "Fe 1": [
        ...["Iron (Fe) chelated by DTPA", "Iron (Fe) as a chelate", "Iron chelates", "Iron EDDHA (ortho, para)"],
        ...[
          "Eisen (Fe) als EDTA-Chelat",
          "Eisen chelatiert",
          "Eisen chelatisiert mit HBED",
          "Fer (Fe) chélaté par IDHA",
        ],
        ...["Forme chélatée du fer", "Hierro (Fe) quelado por EDDHSA", "Hierro quelatado", "Hierro (quelato)"],
        ...["Ferro (Fe) chelato con HEDTA", "IJzer (Fe) chelaat van EDTA", "IJzer (Fe) gechelateerd door DTPA"],
      ],
    }),
  )("%s is %s", (words, meant) => expect(said(words)).toBe(meant));

  test.each(
    cases({
      "P 3": ["Elemental phosphorus", "Phosphor elementar", "Phosphore élémentaire", "Fósforo elemento"],
    }),
  )("%s is the element", (words, meant) => expect(said(words)).toBe(meant));
});

describe("limits and parts", () => {
  const limits = each("max maximum maximal höchstens massimo máximo");
  printed.push(...limits);
  test.each(limits)("%s says an upper limit", (word) =>
    expect(readLabelText(`Cl ${word} 2 %`).lines[0]?.questions[0]?.question).toMatch(/upper limit/),
  );

  const parts = ["of which nitrate", "davon Nitrat", "wovon Nitrat", "dont nitrique", "de los cuales nítrico"];
  parts.push("di cui nitrico", "waarvan nitraat");
  printed.push(...parts);
  test.each(parts)("“%s” is a form of the nitrogen before it", (words) =>
    expect(readLabelText(`N 6 %, ${words} 6 %`)).toMatchObject({ fields: { N: 6, "NO3-N": 6 }, open: 0 }),
  );
});

describe("small words change nothing", () => {
  const small = [
    "of the as in and from at with minimum min content contains containing by weight per form to a an not than only or",
    "mindestens im und mit von aus als sowie garantiert guaranteed element",
    "est de des du la le les l d et dans par sous forme expressed acide acid saure acido",
    "el los las lo y e en con por forma entre",
    "di del della il nel nell nella nelle",
    "van met op door",
  ].flatMap(each);
  printed.push(...small);
  test.each(small)("%s", (word) => expect(said(`Total ${word} zinc`)).toBe("Zn 3"));
});

describe("headings say nothing by themselves", () => {
  const headings = [
    ...["Guaranteed minimum analysis", "Declared nutrients", "Declaration of contents", "Primary plant nutrients"],
    ...[
      "Secondary nutrient content",
      "Micronutrients",
      "Micronutrient",
      "Macronutrients",
      "Trace elements",
      "Plant food",
    ],
    ...[
      "Element",
      "Mineral fertilizer compound",
      "Fertiliser solution NPK",
      "EC fertiliser",
      "EU NPK liquid",
      "Nutrition",
    ],
    ...["Garantierte Zusammensetzung", "Nährstoffe", "Spurennährstoffe", "mit Spurennährstoffen", "Spurenelemente"],
    ...["Dünger", "Volldünger", "Flüssigdünger", "EU-Düngemittel", "Analyse garantie", "Composition", "Engrais"],
    ...[
      "Oligo-éléments",
      "Oligoelements",
      "Composición",
      "Análisis garantizado",
      "Oligoelementos",
      "Abono",
      "Fertilizante",
    ],
    ...["Composizione garantita", "Analisi", "Microelementi", "Microelementos", "Concime", "Fertilizzante"],
    ...["Samenstelling", "Sporenelementen", "Meststof", "NPK w/ TE"],
  ];
  printed.push(...headings);
  test.each(headings)("%s", (heading) => {
    expect(said(heading)).toBe("none");
    expect(readLabelText(`${heading}\nN 10 %`)).toMatchObject({ fields: { N: 10 }, open: 0 });
    expect(readLabelText(`${heading}\nN 10 %`).lines[0]?.outcome).toBe("passed over");
  });
});

test("every word of the tables has its case above", () => {
  const read = new Set(
    printed.flatMap((text) => tokensOf(tidyLine(text)).map((token) => ("text" in token ? token.text : ""))),
  );
  const words = new Set([...read].map((word) => word.toLowerCase()));
  const known = [ELEMENT_WORDS, MARKER_WORDS, HEADING_WORDS].flatMap((table) => [...table.keys()]);
  expect(known.filter((word) => !words.has(word))).toEqual([]);
  expect([...NOT_COUNTED.keys()].every((word) => said(word) === "not counted")).toBe(true);
});
