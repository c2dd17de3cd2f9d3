/** Printed analyses written for the tests, each with the reading a careful person would give it. All products are invented. */

export interface LabelCase {
  readonly name: string;
  readonly text: string;
  readonly fields: Readonly<Record<string, number | string>>;
}

/** Clear from the first line to the last: every number that is a guarantee is read, no question is left. */
export const CLEAR: readonly LabelCase[] = [
  { name: "a bare grade", text: "10-5-5", fields: { N: 10, P2O5: 5, K2O: 5 } },
  { name: "a grade with a heading", text: "N-P-K 7-9-5", fields: { N: 7, P2O5: 9, K2O: 5 } },
  { name: "a grade with en dashes and decimals", text: "NPK 3.5 – 2.5 – 4", fields: { N: 3.5, P2O5: 2.5, K2O: 4 } },
  { name: "a grade with decimal commas", text: "NPK 3,5-2,5-4,0", fields: { N: 3.5, P2O5: 2.5, K2O: 4 } },
  { name: "a grade with plus signs", text: "NPK 12+4+6", fields: { N: 12, P2O5: 4, K2O: 6 } },
  {
    name: "a grade that goes on without spaces",
    text: "NPK 15-5-15+4MgO+3CaO",
    fields: { N: 15, P2O5: 5, K2O: 15, MgO: 4, CaO: 3 },
  },
  { name: "a grade with a trace behind", text: "12-4-6+0.5Fe", fields: { N: 12, P2O5: 4, K2O: 6, Fe: 0.5 } },
  { name: "a grade that goes on", text: "NPK 10-5-5 + 2 MgO", fields: { N: 10, P2O5: 5, K2O: 5, MgO: 2 } },
  {
    name: "a grade with elements behind",
    text: "10-5-5 Ca 4 Mg 1.2 Fe 0.1",
    fields: { N: 10, P2O5: 5, K2O: 5, Ca: 4, Mg: 1.2, Fe: 0.1 },
  },
  { name: "a grade said to be elemental", text: "NPK 10-2.2-4.2 elemental", fields: { N: 10, P: 2.2, K: 4.2 } },
  { name: "a grade with zeros", text: "0-0-50\nSulfur (S) 17 %", fields: { N: 0, P2O5: 0, K2O: 50, S: 17 } },
  {
    name: "names first, dot leaders",
    text: "GUARANTEED ANALYSIS\nTotal Nitrogen (N) ............ 10.0%\nAvailable Phosphate (P2O5) .... 5.0%\nSoluble Potash (K2O) .......... 5.0%",
    fields: { N: 10, P2O5: 5, K2O: 5 },
  },
  {
    name: "numbers first",
    text: "Guaranteed analysis\n9.0% Total Nitrogen (N)\n3.0% Available Phosphate (P2O5)\n6.0% Soluble Potash (K2O)",
    fields: { N: 9, P2O5: 3, K2O: 6 },
  },
  {
    name: "forms of nitrogen set in",
    text: "Total Nitrogen (N) 9%\n   1.9% Ammoniacal Nitrogen\n   7.1% Nitrate Nitrogen",
    fields: { N: 9, "NH4-N": 1.9, "NO3-N": 7.1 },
  },
  {
    name: "forms of nitrogen, urea among them",
    text: "Total nitrogen: 20%\nNitrate nitrogen: 5.9%\nAmmoniacal nitrogen: 3.9%\nUrea nitrogen: 10.2%",
    fields: { N: 20, "NO3-N": 5.9, "NH4-N": 3.9, "Urea-N": 10.2 },
  },
  {
    name: "forms without the word nitrogen, set in",
    text: "Total nitrogen (N) 10 %\n  6 % nitrate\n  4 % ammoniacal",
    fields: { N: 10, "NO3-N": 6, "NH4-N": 4 },
  },
  {
    name: "forms on one line",
    text: "Total nitrogen (N) 10 %, of which nitrate nitrogen 6 %, ammoniacal nitrogen 4 %",
    fields: { N: 10, "NO3-N": 6, "NH4-N": 4 },
  },
  {
    name: "forms in brackets",
    text: "Nitrogen (N) 10 % (6 % nitrate, 4 % ammoniacal)\nP2O5 5 %",
    fields: { N: 10, "NO3-N": 6, "NH4-N": 4, P2O5: 5 },
  },
  { name: "forms by formula", text: "N 10 %\nNO3-N 6 %\nNH4-N 4 %", fields: { N: 10, "NO3-N": 6, "NH4-N": 4 } },
  { name: "forms by formula, turned", text: "N-NO3: 6%\nN-NH4: 4%", fields: { "NO3-N": 6, "NH4-N": 4 } },
  {
    name: "slow nitrogen",
    text: "Total nitrogen (N) 12%\n2% nitrate nitrogen\n6% urea nitrogen\n4% slowly available nitrogen",
    fields: { N: 12, "NO3-N": 2, "Urea-N": 6, "Other-N": 4 },
  },
  {
    name: "further water-soluble nitrogen",
    text: "Total nitrogen 5%\n1% nitrate nitrogen\n4% other water soluble nitrogen",
    fields: { N: 5, "NO3-N": 1, "Other-N": 4 },
  },
  {
    name: "secondary and trace elements, raw materials over two lines",
    text: "Calcium (Ca) 4.0%\nMagnesium (Mg) 1.2%\nSulfur (S) 1.5%\nIron (Fe) 0.10%\nManganese (Mn) 0.05%\nZinc (Zn) 0.05%\nBoron (B) 0.02%\nCopper (Cu) 0.05%\nMolybdenum (Mo) 0.0009%\nDerived from: calcium nitrate, magnesium sulfate,\niron EDTA, boric acid, sodium molybdate.",
    fields: { Ca: 4, Mg: 1.2, S: 1.5, Fe: 0.1, Mn: 0.05, Zn: 0.05, B: 0.02, Cu: 0.05, Mo: 0.0009 },
  },
  {
    name: "chelated parts below the whole",
    text: "Iron (Fe) 0.10%\n0.10% Chelated Iron\nZinc (Zn) 0.05%\n0.03% Chelated Zinc",
    fields: { Fe: 0.1, Zn: 0.05 },
  },
  { name: "only the chelated part", text: "0.13% Chelated Iron (Fe)", fields: { Fe: 0.13 } },
  {
    name: "soluble magnesium below the total",
    text: "Total magnesium (Mg) 2 %\nWater soluble magnesium (Mg) 1.5 %",
    fields: { Mg: 2 },
  },
  { name: "a chelate named", text: "Iron (Fe) chelated by EDTA 0.06 %", fields: { Fe: 0.06 } },
  { name: "a chelate named behind the number", text: "Iron (Fe) 0.06 % chelated by DTPA", fields: { Fe: 0.06 } },
  { name: "a chelate in brackets", text: "Fe (EDTA): 0.06%", fields: { Fe: 0.06 } },
  { name: "sulfur spelt the British way", text: "Sulphur (S) 3 %", fields: { S: 3 } },
  { name: "small digits", text: "P₂O₅ 5 %\nK₂O 6 %\nSO₃ 10 %", fields: { P2O5: 5, K2O: 6, SO3: 10 } },
  {
    name: "oxides with the element in brackets",
    text: "Phosphorus pentoxide (P2O5) soluble in water 5.0% (2.2% P)\nPotassium oxide (K2O) soluble in water 6.0% (5.0% K)",
    fields: { P2O5: 5, K2O: 6 },
  },
  {
    name: "magnesium and sulfur as oxides",
    text: "Magnesium oxide (MgO) 3 %\nSulphur trioxide (SO3) 6 %\nCalcium oxide 5 %",
    fields: { MgO: 3, SO3: 6, CaO: 5 },
  },
  {
    name: "phosphate soluble in two ways",
    text: "P2O5 soluble in neutral ammonium citrate and in water 5 %\nP2O5 soluble in water 4 %",
    fields: { P2O5: 5 },
  },
  {
    name: "available phosphoric acid",
    text: "Available phosphoric acid (P2O5) 8%\nSoluble potash 6%",
    fields: { P2O5: 8, K2O: 6 },
  },
  {
    name: "elements by their bare names on an American label",
    text: "Available phosphate 5%\nSoluble potash 5%\nCalcium 2%\nMagnesium 1%",
    fields: { P2O5: 5, K2O: 5, Ca: 2, Mg: 1 },
  },
  {
    name: "said to be elements",
    text: "Phosphorus (P) elemental 2.2 %\nPotassium (K) elemental 4.2 %",
    fields: { P: 2.2, K: 4.2 },
  },
  {
    name: "said to be elements in the heading",
    text: "Analysis as elements\nN 10 %\nP 2.2 %\nK 4.2 %",
    fields: { N: 10, P: 2.2, K: 4.2 },
  },
  {
    name: "mg/kg",
    text: "Iron (Fe) 400 mg/kg\nManganese (Mn) 200 mg/kg\nMolybdenum (Mo) 10 mg/kg",
    fields: { Fe: 0.04, Mn: 0.02, Mo: 0.001, Basis: "w/w" },
  },
  {
    name: "mg/kg in the heading",
    text: "Trace elements (mg/kg)\nFe 400\nMn 200\nB 100",
    fields: { Fe: 0.04, Mn: 0.02, B: 0.01, Basis: "w/w" },
  },
  { name: "ppm without a space", text: "Fe 400ppm, Mn 200ppm", fields: { Fe: 0.04, Mn: 0.02, Basis: "w/w" } },
  { name: "g/kg", text: "Nitrogen (N) 100 g/kg\nK2O 50 g/kg", fields: { N: 10, K2O: 5, Basis: "w/w" } },
  {
    name: "percent first, then mg/kg under a heading",
    text: "% w/w\nN 8 %\nK2O 6 %\nMicronutrients mg/kg\nFe 300\nZn 50",
    fields: { N: 8, K2O: 6, Fe: 0.03, Zn: 0.005, Basis: "w/w" },
  },
  {
    name: "by volume",
    text: "Guaranteed analysis (w/v)\nN 5.2 %\nP2O5 1.3 %\nK2O 6.6 %",
    fields: { N: 5.2, P2O5: 1.3, K2O: 6.6, Basis: "w/v" },
  },
  { name: "by volume on each line", text: "N 5.2 % w/v\nCa 4.7 % w/v", fields: { N: 5.2, Ca: 4.7, Basis: "w/v" } },
  {
    name: "grams in a litre",
    text: "Nitrogen (N) 52 g/L\nCalcium (Ca) 47 g/L",
    fields: { N: 5.2, Ca: 4.7, Basis: "w/v" },
  },
  {
    name: "both bases on one line",
    text: "Nitrogen (N) 8 % w/w (9.9 % w/v)\nPotash (K2O) 6 % w/w (7.4 % w/v)",
    fields: { N: 8, K2O: 6, Basis: "w/w" },
  },
  { name: "a density", text: "N 8 % w/w\nDensity 1.24 kg/L", fields: { N: 8, Basis: "w/w", Density: 1.24 } },
  {
    name: "a specific gravity at a temperature",
    text: "N 8 %\nSpecific gravity 1.24 at 20 °C",
    fields: { N: 8, Density: 1.24 },
  },
  {
    name: "pounds in a gallon",
    text: "N 8 %\nWeight per gallon: 10.0 lbs at 68 °F",
    fields: { N: 8, Density: 1.19826427317 },
  },
  {
    name: "one line with semicolons",
    text: "N 10 %; P2O5 5 %; K2O 5 %; MgO 2 %",
    fields: { N: 10, P2O5: 5, K2O: 5, MgO: 2 },
  },
  { name: "one line with bars", text: "N 10% | P2O5 5% | K2O 5%", fields: { N: 10, P2O5: 5, K2O: 5 } },
  { name: "tabs", text: "Nitrogen\t(N)\t10 %\nBoron\t(B)\t0.02 %", fields: { N: 10, B: 0.02 } },
  { name: "equals signs, no units at all", text: "N = 10\nP2O5 = 5\nFe = 0.1", fields: { N: 10, P2O5: 5, Fe: 0.1 } },
  {
    name: "names and numbers on lines of their own",
    text: "Total nitrogen (N)\n10 %\nAvailable phosphate (P2O5)\n5 %\nSoluble potash (K2O)\n6 %",
    fields: { N: 10, P2O5: 5, K2O: 6 },
  },
  {
    name: "numbers above their names",
    text: "10 %\nTotal nitrogen (N)\n5 %\nAvailable phosphate (P2O5)",
    fields: { N: 10, P2O5: 5 },
  },
  { name: "a small table", text: "N P2O5 K2O MgO\n12 4 6 2", fields: { N: 12, P2O5: 4, K2O: 6, MgO: 2 } },
  {
    name: "the grade and the lines say the same",
    text: "9-3-6\nTotal nitrogen (N) 9 %\nAvailable phosphate (P2O5) 3 %\nSoluble potash (K2O) 6 %",
    fields: { N: 9, P2O5: 3, K2O: 6 },
  },
  {
    name: "an elemental grade borne out by its lines",
    text: "NPK 10-2.2-4.2\nPhosphorus (P) elemental 2.2 %\nPotassium (K) elemental 4.2 %",
    fields: { N: 10, P: 2.2, K: 4.2 },
  },
  { name: "footnote marks and stars", text: "Total Nitrogen (N)* 10%\nIron (Fe)† 0.1%", fields: { N: 10, Fe: 0.1 } },
  {
    name: "at least",
    text: "Nitrogen (N), not less than 10 %\nPotash (K2O) min. 5 %\nFe ≥ 0.1 %",
    fields: { N: 10, K2O: 5, Fe: 0.1 },
  },
  { name: "the word percent", text: "Nitrogen (N) 10 percent\nZinc (Zn) 0.05 per cent", fields: { N: 10, Zn: 0.05 } },
  { name: "cobalt is not counted", text: "Cobalt (Co) 0.0005%\nIron (Fe) 0.1%", fields: { Fe: 0.1 } },
  {
    name: "silicon, sodium, chloride",
    text: "SiO2 20 %\nK2O 10 %\nSodium (Na) 0.5 %\nChloride (Cl) 1 %",
    fields: { SiO2: 20, K2O: 10, Na: 0.5, Cl: 1 },
  },
  {
    name: "German",
    text: "NPK-Dünger 8+4+6 mit Spurennährstoffen\n8 % N Gesamtstickstoff\n 3,5 % N Nitratstickstoff\n 4,5 % N Ammoniumstickstoff\n4 % P2O5 wasserlösliches Phosphat\n6 % K2O wasserlösliches Kaliumoxid\n0,02 % Fe Eisen als Chelat von EDTA\nDichte: 1,2 kg/l",
    fields: { N: 8, "NO3-N": 3.5, "NH4-N": 4.5, P2O5: 4, K2O: 6, Fe: 0.02, Density: 1.2 },
  },
  {
    name: "German, oxides by name",
    text: "Gesamtstickstoff 10 %\nCarbamidstickstoff 10 %\nPhosphorpentoxid 5,5 %\nMagnesiumoxid 2 %\nSchwefeltrioxid 4 %",
    fields: { N: 10, "Urea-N": 10, P2O5: 5.5, MgO: 2, SO3: 4 },
  },
  {
    name: "French",
    text: "Engrais NPK 6-4-6\nAzote total (N) : 6 % dont 2,4 % nitrique et 3,6 % uréique\nAnhydride phosphorique (P2O5) soluble dans l'eau : 4 %\nOxyde de potassium (K2O) : 6 %\nFer (Fe) chélaté par EDTA 0,02 %",
    fields: { N: 6, "NO3-N": 2.4, "Urea-N": 3.6, P2O5: 4, K2O: 6, Fe: 0.02 },
  },
  {
    name: "Spanish",
    text: "Nitrógeno (N) total: 7,0 %\nNitrógeno nítrico: 4,0 %\nNitrógeno amoniacal: 3,0 %\nPentóxido de fósforo (P2O5) soluble en agua: 5,0 %\nÓxido de potasio (K2O): 6,0 %\nHierro (Fe) quelatado con EDTA: 0,03 %",
    fields: { N: 7, "NO3-N": 4, "NH4-N": 3, P2O5: 5, K2O: 6, Fe: 0.03 },
  },
  {
    name: "Italian",
    text: "Azoto (N) totale 7%\nAnidride fosforica (P2O5) solubile in acqua 5%\nOssido di potassio (K2O) solubile in acqua 6%\nFerro (Fe) chelato con EDTA 0,03%\nRame (Cu) 0,002%",
    fields: { N: 7, P2O5: 5, K2O: 6, Fe: 0.03, Cu: 0.002 },
  },
  {
    name: "Dutch",
    text: "7% N totaal stikstof\n4% N nitraatstikstof\n3% N ammoniumstikstof\n5% P2O5 fosforzuuranhydride\n6% K2O kaliumoxide\n0,03% Fe ijzer",
    fields: { N: 7, "NO3-N": 4, "NH4-N": 3, P2O5: 5, K2O: 6, Fe: 0.03 },
  },
];

/** Refused or asked about: `never` holds what must not be read without asking. */
export interface DoubtfulCase {
  readonly name: string;
  readonly text: string;
  /** Fields that may be clear all the same. */
  readonly clear: Readonly<Record<string, number | string>>;
  readonly expect: "asked" | "not understood" | "refused";
}

export const DOUBTFUL: readonly DoubtfulCase[] = [
  { name: "phosphorus by its bare name", text: "N 10 %\nPhosphorus 5 %", clear: { N: 10 }, expect: "asked" },
  { name: "P and K by their symbols", text: "N 10 % P 5 % K 5 %", clear: { N: 10 }, expect: "asked" },
  { name: "a table with P and K", text: "N P K\n10 5 5", clear: { N: 10 }, expect: "asked" },
  { name: "phosphate that may be anything", text: "Phosphate 5 %", clear: {}, expect: "asked" },
  { name: "magnesium that may be its oxide", text: "Magnesium 2 %", clear: {}, expect: "asked" },
  { name: "nitrate that may be the ion", text: "Nitrate 20 %", clear: {}, expect: "asked" },
  { name: "sulfate", text: "Sulfate (SO4) 5 %", clear: {}, expect: "asked" },
  { name: "urea that may be the substance", text: "Urea 10 %", clear: {}, expect: "asked" },
  { name: "a zero for the letter O", text: "P205 5 %\nK20 6 %", clear: {}, expect: "asked" },
  { name: "an upper limit", text: "Chlorine (Cl), not more than 0.5 %", clear: {}, expect: "asked" },
  { name: "another upper limit", text: "Sodium (Na) < 1 %", clear: {}, expect: "asked" },
  { name: "mg/kg that can be read in two ways", text: "Iron (Fe) 1.200 mg/kg", clear: {}, expect: "asked" },
  { name: "mg/kg with a comma", text: "Iron (Fe) 1,200 mg/kg", clear: {}, expect: "asked" },
  {
    name: "a grade with something unknown behind gives nothing at all",
    text: "NPK 15-5-15 + 4 Xy",
    clear: {},
    expect: "not understood",
  },
  { name: "an acid that may be P2O5", text: "N 5 %\nPhosphoric acid 75 %", clear: { N: 5 }, expect: "asked" },
  { name: "an acid by its name", text: "Nitric acid 60 %", clear: {}, expect: "not understood" },
  { name: "a date that looks like a grade", text: "12-05-24", clear: {}, expect: "asked" },
  { name: "a ratio that looks like a grade", text: "NPK 3:1:2", clear: {}, expect: "asked" },
  { name: "a grade among unknown words", text: "Leafy friend 7-9-5", clear: {}, expect: "asked" },
  { name: "a fourth nutrient in brackets", text: "NPK (Mg) 12-4-6 (2)", clear: {}, expect: "asked" },
  { name: "a decimal among thousands", text: "Iron (Fe) 1,234.5 mg/kg", clear: {}, expect: "asked" },
  { name: "four numbers", text: "12-12-17-2", clear: {}, expect: "asked" },
  { name: "one nutrient twice", text: "Iron (Fe) 0.1 %\nIron (Fe) 0.6 %", clear: {}, expect: "asked" },
  {
    name: "a part larger than the whole",
    text: "Total magnesium (Mg) 1 %\nWater soluble magnesium (Mg) 2 %",
    clear: {},
    expect: "asked",
  },
  {
    name: "the grade against a line",
    text: "10-5-5\nTotal nitrogen (N) 8 %",
    clear: { N: 8, P2O5: 5, K2O: 5 },
    expect: "asked",
  },
  {
    name: "no unit among percents",
    text: "Nitrogen (N) 10 %\nIron (Fe) 400",
    clear: { N: 10 },
    expect: "not understood",
  },
  {
    name: "no unit where percent is possible",
    text: "Nitrogen (N) 10 %\nIron (Fe) 40",
    clear: { N: 10 },
    expect: "asked",
  },
  { name: "a density without a unit", text: "N 8 %\nDensity 1.24", clear: { N: 8 }, expect: "asked" },
  { name: "two numbers for one thing", text: "Iron (Fe) 0.1 % 0.2 %", clear: {}, expect: "not understood" },
  { name: "a range", text: "Iron (Fe) 0.1-0.2 %", clear: {}, expect: "not understood" },
  { name: "three symbols for one number", text: "Fe, Mn, Zn 0.05 %", clear: {}, expect: "not understood" },
  { name: "a vitamin", text: "Vitamin B 0.1 %", clear: {}, expect: "not understood" },
  {
    name: "substances by name",
    text: "Potassium phosphate 5 %\nCalcium nitrate 10 %\nMagnesium sulfate 3 %",
    clear: {},
    expect: "not understood",
  },
  {
    name: "things that are no nutrients",
    text: "Humic acids 12 %\nSeaweed extract 5 %\npH 6.5",
    clear: {},
    expect: "not understood",
  },
  { name: "directions", text: "Use 5 mL in each gallon of water every 2 weeks", clear: {}, expect: "not understood" },
  { name: "more than everything", text: "Nitrogen (N) 110 %", clear: {}, expect: "not understood" },
  {
    name: "names in a row, then numbers in a row",
    text: "Total nitrogen (N)\nAvailable phosphate (P2O5)\nSoluble potash (K2O)\n10 %\n5 %\n6 %",
    clear: {},
    expect: "not understood",
  },
  { name: "less than nothing", text: "Nitrogen (N) -10 %", clear: {}, expect: "not understood" },
  {
    name: "forms that do not add up",
    text: "N 10 %\nNO3-N 6 %\nNH4-N 1 %",
    clear: { N: 10, "NO3-N": 6, "NH4-N": 1 },
    expect: "refused",
  },
  {
    name: "oxide against element",
    text: "P2O5 5 %\nPhosphorus (P) elemental 4 %",
    clear: { P2O5: 5, P: 4 },
    expect: "refused",
  },
  { name: "more than the whole together", text: "N 60 %\nK2O 60 %", clear: { N: 60, K2O: 60 }, expect: "refused" },
  { name: "by weight and by volume", text: "N 8 % w/w\nK2O 6 % w/v", clear: { N: 8, K2O: 6 }, expect: "refused" },
  { name: "by volume and not said", text: "N 8 % w/v\nK2O 6 %", clear: { N: 8, K2O: 6 }, expect: "refused" },
];
