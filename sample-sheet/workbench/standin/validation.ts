/** Data validation of the host: lists, ranges and checkboxes, marked or refused. */

import { a1Of, areaOf, quoted, splitReference } from "./a1.ts";
import { type Book, type Range, shown } from "./book.ts";
import { imitate } from "./gate.ts";
import { type CellValue, type GridTab, isCellError, type Validation } from "./grid.ts";

type Rule = GoogleAppsScript.Spreadsheet.DataValidation;
type Builder = GoogleAppsScript.Spreadsheet.DataValidationBuilder;

const CRITERIA: Record<Validation["kind"], string> = {
  list: "VALUE_IN_LIST",
  range: "VALUE_IN_RANGE",
  checkbox: "CHECKBOX",
};
export const VALIDATION_CRITERIA = Object.fromEntries(
  Object.values(CRITERIA).map((name) => [name, name]),
) as unknown as typeof GoogleAppsScript.Spreadsheet.DataValidationCriteria;

/** What each rule object stands for. */
const meanings = new WeakMap<object, Validation>();

export function readValidation(rule: Rule | null): Validation | null {
  if (rule === null) return null;
  const meaning = meanings.get(rule);
  if (!meaning) throw new Error("The parameters don't match the method signature for Range.setDataValidation.");
  return meaning;
}

/** Criteria values: a list of texts, or the range itself. */
function criteriaValues(book: Book, rule: Validation): unknown[] {
  if (rule.kind === "list") return [[...rule.values], true];
  return rule.kind === "range" ? [rule.values[0] ?? "", true, book.grid.name] : [];
}

export function validationOf(book: Book, meaning: Validation | null): Rule | null {
  if (meaning === null) return null;
  const rule = imitate<Rule>()("DataValidation", {
    getAllowInvalid: () => meaning.allowInvalid,
    getHelpText: () => meaning.help,
    getCriteriaType: () => CRITERIA[meaning.kind] as unknown as GoogleAppsScript.Spreadsheet.DataValidationCriteria,
    getCriteriaValues: () => criteriaValues(book, meaning),
    copy: () => makeValidationBuilder(book, meaning),
  });
  meanings.set(rule, meaning);
  return rule;
}

/** A new rule refuses nothing until it is told to: on the host, an invalid value is allowed unless set otherwise. */
export function makeValidationBuilder(book: Book, from: Validation | null = null): Builder {
  let meaning: Validation = from ?? { kind: "list", values: [], allowInvalid: true, help: "" };
  const become = (patch: Partial<Validation>): Builder => {
    meaning = { ...meaning, ...patch };
    return builder;
  };
  const builder: Builder = imitate<Builder>()("DataValidationBuilder", {
    requireValueInList: (values: string[]) => {
      if (values.length > 500) throw new Error("The data validation list may hold at most 500 items.");
      return become({ kind: "list", values: values.map(String) });
    },
    requireValueInRange: (range: Range) => {
      const area = {
        row: range.getRow(),
        column: range.getColumn(),
        rows: range.getNumRows(),
        columns: range.getNumColumns(),
      };
      return become({ kind: "range", values: [`${quoted(range.getSheet().getName())}!${a1Of(area)}`] });
    },
    requireCheckbox: () => become({ kind: "checkbox", values: [] }),
    setAllowInvalid: (allowInvalid: boolean) => become({ allowInvalid }),
    setHelpText: (help: string) => become({ help }),
    build: () => validationOf(book, meaning) as Rule,
  });
  return builder;
}

/** Throws, as the host does, when a rule that rejects stands in the way of a write. */
export function refuseInvalid(tab: GridTab, row: number, column: number, value: CellValue): void {
  const rule = tab.validation(row, column);
  if (rule === null || rule.allowInvalid || value === null) return;
  const text = shown({ value, formula: "", format: "" });
  const fine = rule.kind === "checkbox" ? typeof value === "boolean" : choicesOf(tab, rule).includes(text);
  if (fine && !isCellError(value)) return;
  throw new Error(
    `The data you entered in cell ${a1Of({ row, column, rows: 1, columns: 1 })} violates the data validation rules set on this cell.`,
  );
}

function choicesOf(tab: GridTab, rule: Validation): readonly string[] {
  if (rule.kind === "list") return rule.values;
  const { tab: name, a1 } = splitReference(rule.values[0] ?? "");
  const area = areaOf(a1, { rows: tab.rows(), columns: tab.columns() });
  if (!area || (name !== null && name !== tab.name()))
    throw new Error("not imitated: rejecting by a range of another tab");
  return tab.read(area).flatMap((line) => line.map(shown));
}
