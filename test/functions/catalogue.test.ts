/** The reference as README and panel print it: values of examples in one line, formulas taken apart, optional arguments. */

import { describe, expect, it } from "vitest";
import { functionHelp, typedArguments, valueText } from "../../src/functions/catalogue.ts";
import type { ExampleValue } from "../../src/functions/words.ts";

describe("a value of an example in one line", () => {
  it.each<[ExampleValue, string]>([
    [1.5, "1.5"],
    [0, "0"],
    [true, "true"],
    ["Fern", "Fern"],
    // Blank text is shown as two quotes: a gap would be overlooked.
    ["", '""'],
    [{ day: "2026-03-01" }, "2026-03-01"],
    [
      [
        ["Plant", "Days"],
        ["Fern", ""],
        ["Ivy", { day: "2024-02-29" }],
      ],
      'Plant, Days; Fern, ""; Ivy, 2024-02-29',
    ],
  ])("%j is %s", (value, text) => expect(valueText(value)).toBe(text));
});

describe("a formula taken apart", () => {
  const typed = (formula: string) => typedArguments({ formula, args: [], gives: "", source: "" });

  it("parts at commas outside quotes and brackets, and trims", () => {
    expect(typed("=FEED_PPM(\"10-5-5, w/v\", 'Care log'!A1:B2, DATE(2026,3,1),  5)")).toEqual([
      '"10-5-5, w/v"',
      "'Care log'!A1:B2",
      "DATE(2026,3,1)",
      "5",
    ]);
    expect(typed("=ROOT_LAST()")).toEqual([]);
  });

  it.each(["ROOT_LAST(A1)", "x =ROOT_LAST(A1)", "=ROOT_LAST(A1) + 1", "=ROOT_LAST", ""])("refuses %j", (formula) => {
    expect(() => typed(formula)).toThrow(`This is no formula: ${formula}`);
  });
});

it("helps with each argument by its name, and says which may be left out", () => {
  const rest = functionHelp().find(({ name }) => name === "ROOT_REST");
  // ROOT_REST(plants, log, asOf, [heading], [events])
  expect(rest?.args.map(({ name, optional }) => [name, optional])).toEqual([
    ["plants", false],
    ["log", false],
    ["asOf", false],
    ["heading", true],
    ["events", true],
  ]);
  for (const { args } of functionHelp()) for (const { help } of args) expect(help).toMatch(/^\S.{15}/);
});
