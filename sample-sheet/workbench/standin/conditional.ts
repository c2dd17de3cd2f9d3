/** Conditional format rules of the host: by formula, set all at once for a whole tab. */

import type { Range } from "./book.ts";
import { imitate } from "./gate.ts";
import type { Area, ConditionalRule } from "./grid.ts";

type Rule = GoogleAppsScript.Spreadsheet.ConditionalFormatRule;
type Builder = GoogleAppsScript.Spreadsheet.ConditionalFormatRuleBuilder;
type Condition = GoogleAppsScript.Spreadsheet.BooleanCondition;
type Criteria = GoogleAppsScript.Spreadsheet.BooleanCriteria;

const meanings = new WeakMap<object, ConditionalRule>();

export function readRule(rule: Rule): ConditionalRule {
  const meaning = meanings.get(rule);
  if (!meaning) throw new Error("The parameters don't match the method signature for Sheet.setConditionalFormatRules.");
  return meaning;
}

export function ruleOf(meaning: ConditionalRule, rangeOf: (area: Area) => Range): Rule {
  const rule = imitate<Rule>()("ConditionalFormatRule", {
    getRanges: () => meaning.areas.map(rangeOf),
    getBooleanCondition: () =>
      imitate<Condition>()("BooleanCondition", {
        getCriteriaType: () => "CUSTOM_FORMULA" as unknown as Criteria,
        getCriteriaValues: () => [meaning.formula],
        getBackground: () => meaning.background,
        getFontColor: () => meaning.fontColor,
      }),
  });
  meanings.set(rule, meaning);
  return rule;
}

export function makeRuleBuilder(): Builder {
  let ranges: Range[] = [];
  let meaning: ConditionalRule = { formula: "", areas: [], background: null, fontColor: null };
  const become = (patch: Partial<ConditionalRule>): Builder => {
    meaning = { ...meaning, ...patch };
    return builder;
  };
  const builder: Builder = imitate<Builder>()("ConditionalFormatRuleBuilder", {
    whenFormulaSatisfied: (formula: string) => become({ formula }),
    setBackground: (background: string | null) => become({ background }),
    setFontColor: (fontColor: string | null) => become({ fontColor }),
    setRanges: (given: Range[]) => {
      ranges = given;
      return builder;
    },
    build: () => {
      if (ranges.length === 0 || meaning.formula === "") {
        throw new Error("A conditional format rule needs a condition and at least one range.");
      }
      const areas = ranges.map((range) => ({
        row: range.getRow(),
        column: range.getColumn(),
        rows: range.getNumRows(),
        columns: range.getNumColumns(),
      }));
      return ruleOf({ ...meaning, areas }, () => ranges[0] as Range);
    },
  });
  return builder;
}
