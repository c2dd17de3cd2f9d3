/** Words, formulas, numbers and units of a printed line, each told by hand. */

import { describe, expect, it } from "vitest";
import { type Token, tidyLine, tokensOf } from "../../src/core/label-tokens.ts";

/** "number 5", "unit 0.1 w/v", "formula P2O5", "marker oxide" … */
const said = (token: Token): string => {
  switch (token.kind) {
    case "unit":
      return `unit ${token.unit.percent} ${token.unit.basis ?? "?"}`;
    case "formula":
    case "misprint":
      return `${token.kind} ${token.term}`;
    case "element":
      return `element ${token.symbol}`;
    case "ion":
      return `ion ${token.ion}`;
    case "marker":
      return `marker ${token.marker}`;
    default:
      return `${token.kind} ${token.text}`;
  }
};
const of = (line: string) => tokensOf(tidyLine(line)).map(said).join(" · ");

describe("a line is tidied", () => {
  it.each([
    ["  N   10 % ", "N 10 %"],
    ["P₂O₅ 5 K₂O ₀₁₂₃₄₅₆₇₈₉", "P2O5 5 K2O 0123456789"],
    ["10‐5‑5 10‒5–5 10—5−5", "10-5-5 10-5-5 10-5-5"],
    ["Iron* (Fe)† ‡ ® ™ • ▪ ● ◦ 1", "Iron (Fe) 1"],
    ["Nitrogen ....... 10", "Nitrogen 10"],
    ["Nitrogen . . . . 10", "Nitrogen 10"],
    ["Nitrogen … 10", "Nitrogen 10"],
    ["Nitrogen ____ 10", "Nitrogen 10"],
    ["Nitrogen ---- 10", "Nitrogen 10"],
    ["Nitrogen ==== 10", "Nitrogen 10"],
    ["Nitrogen*10", "Nitrogen 10"],
    ["Nitrogen…10", "Nitrogen 10"],
    ["Nitrogen....10", "Nitrogen 10"],
    ["N_1 = 10.5 - 5", "N_1 = 10.5 - 5"],
  ])("%j", (line, tidy) => expect(tidyLine(line)).toBe(tidy));
});

describe("units: what one of them is in percent, and of what", () => {
  it.each([
    ["mg/100 g", "0.001 w/w"],
    ["mg / 100g", "0.001 w/w"],
    ["g/100 g", "1 w/w"],
    ["g / 100 g", "1 w/w"],
    ["g/100 mL", "1 w/v"],
    ["g / 100 ml", "1 w/v"],
    ["mg/kg", "0.0001 w/w"],
    ["mg / kg", "0.0001 w/w"],
    ["ppm", "0.0001 w/w"],
    ["µg/g", "0.0001 w/w"],
    ["μg / g", "0.0001 w/w"],
    ["g/kg", "0.1 w/w"],
    ["g / kg", "0.1 w/w"],
    ["mg/L", "0.0001 w/v"],
    ["mg / liter", "0.0001 w/v"],
    ["g/l", "0.1 w/v"],
    ["g / litre", "0.1 w/v"],
    ["%", "1 ?"],
    ["percent", "1 ?"],
    ["per cent", "1 ?"],
    ["Prozent", "1 ?"],
    ["pct", "1 ?"],
    ["% w/w", "1 w/w"],
    ["% (m/m)", "1 w/w"],
    ["%(p/p)", "1 w/w"],
    ["% w/v", "1 w/v"],
    ["% (m / v)", "1 w/v"],
    ["% p/vol", "1 w/v"],
    ["w/v", "1 w/v"],
    ["(w/w)", "1 w/w"],
    ["w/v %", "1 w/v"],
  ])("5 %s", (unit, expected) => expect(of(`5 ${unit}`)).toBe(`number 5 · unit ${expected}`));

  it.each([
    ["400mg/kg", "number 400 · unit 0.0001 w/w"],
    ["400ppm", "number 400 · unit 0.0001 w/w"],
    ["1 400mg/kg", "number 1 400 · unit 0.0001 w/w"],
    ["5g/L", "number 5 · unit 0.1 w/v"],
    ["5%", "number 5 · unit 1 ?"],
    ["ppmx 5", "unknown ppmx · number 5"],
  ])("%s", (line, expected) => expect(of(line)).toBe(expected));
});

/** Every way of writing a text with or without a space at each "_". */
function spaced(text: string): string[] {
  const [first = "", ...others] = text.split("_");
  let all = [first];
  for (const part of others) all = all.flatMap((so) => [`${so}${part}`, `${so} ${part}`]);
  return all;
}

describe("spaces between the signs change nothing", () => {
  it.each([
    ["NO3_-_N", "formula NO3-N"],
    ["N_-_NO3", "formula NO3-N"],
    ["N_(_NO3_)", "formula NO3-N"],
    ["NH4_-_N", "formula NH4-N"],
    ["N_-_NH4", "formula NH4-N"],
    ["N_(_NH4_)", "formula NH4-N"],
    ["urea_-_N", "formula Urea-N"],
    ["N_-_urea", "formula Urea-N"],
    ["NH2_-_N", "formula Urea-N"],
    ["N_-_NH2", "formula Urea-N"],
    ["P_2_O_5", "formula P2O5"],
    ["K_2_O", "formula K2O"],
    ["SO_3", "formula SO3"],
    ["Na_2_O", "formula Na2O"],
    ["SiO_2", "formula SiO2"],
    ["N_-_P_-_K", "heading NPK"],
    ["NO3_-", "ion NO3"],
    ["NH4_+", "ion NH4"],
    ["SO4_2-", "ion SO4"],
    ["PO4_3-", "ion PO4"],
  ])("%s", (pattern, expected) => {
    for (const text of spaced(pattern)) {
      // As tidied, and at the end of a line or before a mark.
      expect(tokensOf(text).map(said).join(" · ")).toBe(expected);
      expect(tokensOf(`${text}: 5`).map(said).join(" · ")).toBe(`${expected} · number 5`);
    }
  });

  it.each([
    ["mg_/_100_g", "0.001 w/w"],
    ["g_/_100_g", "1 w/w"],
    ["g_/_100_ml", "1 w/v"],
    ["mg_/_kg", "0.0001 w/w"],
    ["µg_/_g", "0.0001 w/w"],
    ["g_/_kg", "0.1 w/w"],
    ["mg_/_l", "0.0001 w/v"],
    ["g_/_l", "0.1 w/v"],
    ["%_w_/_v", "1 w/v"],
    ["%_(_w_/_v_)", "1 w/v"],
  ])("5 %s", (pattern, expected) => {
    for (const text of spaced(pattern)) {
      expect(tokensOf(`5 ${text}`).map(said).join(" · ")).toBe(`number 5 · unit ${expected}`);
      expect(tokensOf(`5 ${text.toUpperCase()}, 6`).map(said).join(" · ")).toBe(
        `number 5 · unit ${expected} · number 6`,
      );
    }
  });

  it("a unit is told as it is printed", () => {
    const text = (line: string) => tokensOf(line).flatMap((token) => (token.kind === "unit" ? [token.unit.text] : []));
    expect(text("5 mg / kg")).toEqual(["mg / kg"]);
    expect(text("5 percent")).toEqual(["%"]);
    expect(text("5 %(m/v) 6 (p/p)")).toEqual(["% w/v", "% w/w"]);
  });
});

describe("formulas", () => {
  it.each([
    ["NO3-N", "formula NO3-N"],
    ["N-NO3", "formula NO3-N"],
    ["N (NO3)", "formula NO3-N"],
    ["NO3 - N", "formula NO3-N"],
    ["NH4-N", "formula NH4-N"],
    ["N - NH4", "formula NH4-N"],
    ["N(NH4)", "formula NH4-N"],
    ["urea-N", "formula Urea-N"],
    ["N-Urea", "formula Urea-N"],
    ["N-NH2", "formula Urea-N"],
    ["NH2 - N", "formula Urea-N"],
    ["P2O5", "formula P2O5"],
    ["P 2 O 5", "formula P2O5"],
    ["K2O", "formula K2O"],
    ["K 2 O", "formula K2O"],
    ["CaO", "formula CaO"],
    ["MGO", "formula MgO"],
    ["SO3", "formula SO3"],
    ["SO 3", "formula SO3"],
    ["Na2O", "formula Na2O"],
    ["SiO2", "formula SiO2"],
    ["P205", "misprint P2O5"],
    ["K20", "misprint K2O"],
    ["Na20", "misprint Na2O"],
    ["NO3", "ion NO3"],
    ["NO3-", "ion NO3"],
    ["NH4+", "ion NH4"],
    ["SO4 2-", "ion SO4"],
    ["PO4", "ion PO4"],
    ["N", "formula N"],
    ["Fe", "formula Fe"],
    ["FE", "formula Fe"],
    ["Mg", "formula Mg"],
    ["mg", "unknown mg"],
    ["ca", "unknown ca"],
    ["Cab", "unknown Cab"],
    ["Ca4", "unknown Ca4"],
    ["NO3x-", "unknown NO3x"],
  ])("%s", (text, expected) => expect(of(text)).toBe(expected));

  it.each(["P2O5x", "K2O1", "NO3-Nx", "P2055"])("%s is none of them", (text) =>
    expect(of(text)).not.toMatch(/formula (P2O5|K2O|NO3-N)|misprint/),
  );
});

describe("words, in six languages, with or without accents", () => {
  it.each([
    ["Nitrogen", "element N"],
    ["Gesamt-Stickstoff", "marker total · element N"],
    ["Gesamtstickstoff", "marker total · element N"],
    ["Nitratstickstoff", "marker nitrate · element N"],
    ["Ammoniumstickstoff", "marker ammonium · element N"],
    ["Carbamidstickstoff", "marker urea · element N"],
    ["Molybdän", "element Mo"],
    ["azote", "element N"],
    ["hierro", "element Fe"],
    ["ijzer", "element Fe"],
    ["Phosphorpentoxid", "element P · marker oxide"],
    ["Kaliumoxid", "element K · marker oxide"],
    ["wasserlöslich", "marker soluble"],
    ["chelated", "marker chelated"],
    ["of which", "marker filler · marker of which"],
    ["Analysis", "heading Analysis"],
    ["Cobalt", "not counted Cobalt"],
    ["Co", "not counted Co"],
    ["zinc-free", "element Zn · unknown free"],
    ["seaweed", "unknown seaweed"],
    ["🌱", "unknown 🌱"],
  ])("%s", (text, expected) => expect(of(text)).toBe(expected));

  it.each([
    ["not less than 5", "marker filler · number 5"],
    ["not more than 5", "marker at most · number 5"],
    ["at least 5", "marker filler · number 5"],
    ["höchstens 5", "marker at most · number 5"],
    ["< 5", "marker at most · number 5"],
    ["≤5", "marker at most · number 5"],
    ["> 5", "marker filler · number 5"],
    ["≥5", "marker filler · number 5"],
  ])("%s", (text, expected) => expect(of(text)).toBe(expected));
});

describe("numbers and marks between", () => {
  it.each([
    ["1.5", "number 1.5"],
    ["1,234.5", "number 1,234.5"],
    [".5", "number .5"],
    ["1 234,5", "number 1 234,5"],
    ["1'234", "number 1'234"],
    ["1 23", "number 1 · number 23"],
    ["N: 5; P = 3 | K + 2", "formula N · number 5 · formula P · number 3 · formula K · number 2"],
    ["N (5) [3]", "formula N · open ( · number 5 · close ) · open ( · number 3 · close )"],
    ["N - 5.", "formula N · number 5"],
    ["5x", "unknown 5x"],
    ["5kg", "unknown 5kg"],
    ["5 W/V", "number 5 · unit 1 w/v"],
    ["Fe NO3-N NH4-N urea-N", "formula Fe · formula NO3-N · formula NH4-N · formula Urea-N"],
    ["Fe NH4-N", "formula Fe · formula NH4-N"],
    ["Fe urea-N", "formula Fe · formula Urea-N"],
    ["Fe P2O5", "formula Fe · formula P2O5"],
    ["Fe K20", "formula Fe · misprint K2O"],
    ["Fe NO3 5", "formula Fe · ion NO3 · number 5"],
    [".55", "number .55"],
    ["12 345 678,25", "number 12 345 678,25"],
    ["N < 5", "formula N · marker at most · number 5"],
    ["> 5 < 6", "marker filler · number 5 · marker at most · number 6"],
    ["400µg/g", "number 400 · unit 0.0001 w/w"],
    ["N-P-K", "heading NPK"],
  ])("%s", (text, expected) => expect(of(text)).toBe(expected));
});
