/** The records themselves: names that are fixed for ever, words that are complete, examples that come true. */

import { describe, expect, it } from "vitest";
import { callOf, functionHelp, isRange, typedArguments } from "../../src/functions/catalogue.ts";
import { REFERENCE } from "../../src/functions/reference.ts";
import { call, expectCells, hostCells, plain } from "./cells.ts";

/** A name or an argument order lives for ever in people's sheets; more may only be added at the end. */
const FIXED = [
  "FEED_PPM(label, dose, [unit], [elements], [density])",
  "FEED_MIX(feeds, recipe, [water], [elements])",
  "FEED_SOLVE(target, feeds, [water], [litres], [step])",
  "FEED_EC(solution, [tempC])",
  "FEED_RISK(solution, [pH])",
  "FEED_LEFT(feeds, purchases, batches, [asOf], [unit], [density], [heading])",
  "WATER_HARDNESS(calcium, magnesium, [unit])",
  "WATER_CLASS(hardness)",
  "WATER_CONVERT(value, from, to)",
  "WATER_BALANCE(report)",
  "WATER_BLEND(tap, low, target)",
  "WATER_ACID(alkalinity, pH, target, acid, [litres])",
  "WATER_STATE(composition, pH, [tempC], [air], [unit])",
  "METER_AT25(ec, tempC)",
  "METER_TDS(ec, scale)",
  "METER_EC(tds, scale)",
  "METER_HISTORY(batches, [low], [high], [meters], [purchases])",
  "ROOT_LAST(plants, log, [heading], [events])",
  "ROOT_REST(plants, log, asOf, [heading], [events])",
  "ROOT_BOARD(plants, log, asOf, [events], [rules])",
  "POT_USE(plants, log, asOf, [days], [heading], [events])",
  "POT_TREND(plants, log, asOf, [days], [heading], [events])",
  "POT_SALT(fill, topup, used, volume)",
  "POT_DUE(plants, log, asOf, [events], [rules], [claims])",
  "CHECK_EVERY(readings, [low], [high])",
  "TRIAL_P(a, b)",
];

it("has exactly the functions and arguments that were promised, in this order", () => {
  expect(REFERENCE.map(callOf)).toEqual(FIXED);
});

describe.each(REFERENCE.map((one) => [one.name, one] as const))("%s", (name, record) => {
  const { examples, sources, seeAlso } = record;

  it("has its words: a sentence, help for every argument, a source, a see-also that is there", () => {
    expect(record.summary).toMatch(/^[A-Z].*\.$/);
    expect(record.result.length).toBeGreaterThan(20);
    expect(sources.length).toBeGreaterThan(0);
    expect(seeAlso.length).toBeGreaterThan(0);
    for (const other of seeAlso) {
      expect(other).not.toBe(name);
      expect(REFERENCE.map((one) => one.name)).toContain(other);
    }
    for (const argument of record.args) {
      expect(argument.help.length).toBeGreaterThan(15);
      expect(argument.help.startsWith("Optional. "), `${argument.name}: "${argument.help}"`).toBe(
        argument.optional === true,
      );
    }
    const firstOptional = record.args.findIndex((argument) => argument.optional === true);
    const tail = firstOptional === -1 ? [] : record.args.slice(firstOptional);
    expect(tail.every((argument) => argument.optional === true)).toBe(true);
  });

  it("has two examples or more, one of them with a range, each with its source", () => {
    expect(examples.length).toBeGreaterThanOrEqual(2);
    expect(examples.some((example) => example.args.some(isRange))).toBe(true);
    for (const example of examples) expect(example.source.length).toBeGreaterThan(10);
  });

  it.each(examples.map((example) => [example.formula, example] as const))("%s", (_, example) => {
    const answer = call(
      name,
      example.args.map((value) => hostCells(value)),
    );
    expectCells(plain(answer), example.gives, example.within ?? 1e-6);
  });

  it.each(examples.map((example) => [example.formula, example] as const))(
    "%s is typed as it is tried",
    (_, example) => {
      expect(example.formula.startsWith(`=${name}(`)).toBe(true);
      const typed = typedArguments(example);
      expect(typed.length).toBe(example.args.length);
      example.args.forEach((value, at) => {
        const text = typed[at] as string;
        const reference = /^(?:'[^']+'!|\w+!)?([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(text);
        if (isRange(value)) {
          expect(reference, `${text} stands for a range`).not.toBeNull();
          const [, fromColumn = "", fromRow, toColumn = "", toRow] = reference as RegExpExecArray;
          expect(Number(toRow) - Number(fromRow) + 1, `rows of ${text}`).toBe(value.length);
          expect(toColumn.charCodeAt(0) - fromColumn.charCodeAt(0) + 1, `columns of ${text}`).toBe(value[0]?.length);
        } else if (typeof value === "object") {
          const [year, month, day] = value.day.split("-").map(Number);
          if (reference === null) expect(text).toBe(`DATE(${year};${month};${day})`.replace(/;/g, ","));
        } else if (typeof value === "boolean") {
          expect(text).toBe(value ? "TRUE" : "FALSE");
        } else {
          expect(text).toBe(value === "" ? "" : JSON.stringify(value));
        }
      });
    },
  );
});

it("gives its words to the panel without a function in them", () => {
  const help = functionHelp();
  expect(JSON.parse(JSON.stringify(help))).toEqual(help);
  expect(help.map((words) => words.call)).toEqual(FIXED);
});
