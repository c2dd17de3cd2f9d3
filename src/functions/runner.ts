/** The one runner of all custom functions: counts and reads arguments, maps over ranges, answers row by row. */

import type { DayReader } from "../core/cell.ts";
import { readCell } from "../core/cell.ts";
import { BadInput, isBadInput, NoConvergence } from "../core/errors.ts";
import { readText } from "../core/reading.ts";
import { badRow, type DateMaker, hostRow, rectangle } from "./answers.ts";
import type {
  Argument,
  FixedArguments,
  FunctionRecord,
  Key,
  LabelSource,
  RowArguments,
  ScalarArgument,
  Table,
} from "./record.ts";
import { REGISTRY } from "./registry.ts";
import { readScalar, type Scalar, type ScalarValue, wanted } from "./scalars.ts";
import { isBlankCell, readNumbers, readTable, rowsOf, withoutBlankEnd } from "./table.ts";

export interface RunnerHost {
  readonly dayOf: DayReader;
  readonly dateOf: DateMaker;
}

/** Answers a custom function by name with what the host may put into cells: one value, or rows of one width. */
export type Call = (name: string, args: readonly unknown[]) => unknown;

const BY_NAME: ReadonlyMap<string, FunctionRecord> = new Map(REGISTRY.map((record) => [record.name, record]));

/** Makes the runner for a host. Its `call` throws an Error whose message is for the person at the sheet. */
export function createRunner(host: RunnerHost): Call {
  return (name, args) => {
    const record = BY_NAME.get(name);
    if (record === undefined) throw new BadInput("unknown-function", `There is no function named ${name} here.`);
    countArguments(record, args);
    return record.compute.kind === "whole" ? answerWhole(record, args, host) : answerRows(record, args, host);
  };
}

function countArguments({ name, args: declared }: FunctionRecord, args: readonly unknown[]): void {
  if (args.length > declared.length) {
    const names = declared.map((argument) => argument.name).join(", ");
    throw new BadInput(
      "too-many",
      `${name} takes at most ${declared.length} arguments (${names}); ${args.length} were given.`,
    );
  }
  const missing = declared.slice(args.length).find((argument) => argument.optional !== true);
  if (missing !== undefined) {
    throw new BadInput(
      "too-few",
      `${name} also needs ${missing.name}. ${wanted(missing, missing.kind === "number" ? missing.unit : undefined)}.`,
    );
  }
}

type Read =
  | { readonly kind: "scalar"; readonly scalar: Scalar }
  | { readonly kind: "table"; readonly table: Table | null }
  | { readonly kind: "numbers"; readonly numbers: readonly number[] }
  | { readonly kind: "heading"; readonly text: string | null };

function isScalar(argument: Argument): argument is ScalarArgument {
  return argument.kind !== "table" && argument.kind !== "numbers" && argument.kind !== "heading";
}

function readArgument(argument: Argument, raw: unknown, dayOf: DayReader): Read {
  if (isScalar(argument)) return { kind: "scalar", scalar: readScalar(raw, argument, dayOf) };
  if (argument.kind === "heading") return { kind: "heading", text: readHeading(raw, argument.name, dayOf) };
  if (argument.kind === "numbers") return { kind: "numbers", numbers: readNumbers(raw, argument, dayOf) };
  const blank = isBlankCell(raw) || (rowsOf(raw)?.every((row) => row.every(isBlankCell)) ?? false);
  if (blank && argument.optional === true) return { kind: "table", table: null };
  return { kind: "table", table: readTable(raw, argument.name, argument.columns, dayOf) };
}

function readHeading(raw: unknown, name: string, dayOf: DayReader): string | null {
  const rows = rowsOf(raw);
  if (rows !== null && (rows.length > 1 || (rows[0]?.length ?? 0) > 1)) {
    throw new BadInput("not-one-value", `${name} is a range. Give one text, such as "Days at rest".`);
  }
  return readText(readCell(rows === null ? raw : rows[0]?.[0], dayOf), name);
}

function readAll(record: FunctionRecord, args: readonly unknown[], dayOf: DayReader): ReadonlyMap<string, Read> {
  return new Map(record.args.map((argument, at) => [argument.name, readArgument(argument, args[at], dayOf)]));
}

function declared<Kind extends Read["kind"]>(
  read: ReadonlyMap<string, Read>,
  name: string,
  kind: Kind,
): Extract<Read, { kind: Kind }> {
  const found = read.get(name);
  if (found?.kind !== kind) throw new Error(`The record declares no ${kind} named ${name}.`);
  return found as Extract<Read, { kind: Kind }>;
}

function fixedArguments(read: ReadonlyMap<string, Read>, rawKeys: (name: string) => readonly Key[]): FixedArguments {
  const optionalTable = (name: string) => declared(read, name, "table").table;
  return {
    optionalTable,
    table(name) {
      const table = optionalTable(name);
      if (table === null) throw new Error(`The record calls ${name} optional but needs it.`);
      return table;
    },
    numbers: (name) => declared(read, name, "numbers").numbers,
    keys: rawKeys,
  };
}

/** The argument that says this one's unit, if one does. */
function unitScalar({ argument }: Scalar, scalars: readonly Scalar[]): Scalar | undefined {
  if (argument.kind !== "number" || argument.unitFrom === undefined) return undefined;
  return scalars.find((other) => other.argument.name === argument.unitFrom);
}

function readIn(scalar: Scalar, scalars: readonly Scalar[], row: number): ScalarValue {
  const unit = unitScalar(scalar, scalars)?.read(row);
  return typeof unit === "string" ? scalar.read(row, unit) : scalar.read(row);
}

/** Reads every scalar of a row, so that a bad one is named even where the arithmetic would not need it. */
function rowArguments(scalars: readonly Scalar[], row: number): RowArguments {
  const values = new Map<string, ScalarValue>(
    scalars.map((scalar) => [scalar.argument.name, readIn(scalar, scalars, row)]),
  );
  const value = <Type>(name: string, is: (value: ScalarValue | undefined) => boolean): Type => {
    const found = values.get(name);
    if (!is(found)) throw new Error(`The record asks for ${name} as another kind than it declares.`);
    return found as Type;
  };
  const isNumber = (found: ScalarValue | undefined) => typeof found === "number";
  const isSource = (found: ScalarValue | undefined): found is LabelSource =>
    typeof found === "object" && found !== null;
  return {
    number: (name) => value(name, isNumber),
    optionalNumber: (name) => value(name, (found) => found === null || isNumber(found)),
    numberOr: (name, word) => value(name, (found) => found === word || isNumber(found)),
    yesNo: (name) => value(name, (found) => typeof found === "boolean"),
    text: (name) => value(name, (found) => typeof found === "string"),
    choice: (name, choices) => value(name, (found) => choices.some((choice) => choice === found)),
    optionalChoice: (name, choices) =>
      value(name, (found) => found === null || choices.some((choice) => choice === found)),
    day: (name) => value(name, isNumber),
    optionalDay: (name) => value(name, (found) => found === null || isNumber(found)),
    label: (name) => value(name, isSource),
    tableRow: (name) => value(name, (found) => isSource(found) && found.kind === "row"),
  };
}

function answerRows(record: FunctionRecord, args: readonly unknown[], { dayOf, dateOf }: RunnerHost): unknown {
  if (record.compute.kind !== "rows") throw new Error(`${record.name} answers with a table.`);
  const read = readAll(record, args, dayOf);
  const scalars = [...read.values()].flatMap((one) => (one.kind === "scalar" ? [one.scalar] : []));
  const heading = [...read.values()].find((one) => one.kind === "heading")?.text ?? null;
  const key = scalars.find((scalar) => scalar.rowCount !== null) ?? scalars[0];
  if (key === undefined) throw new Error(`${record.name} has no scalar to answer for.`);

  const answer = record.compute.prepare(
    fixedArguments(read, () => {
      throw new Error("Only a function that answers with a table reads all keys at once.");
    }),
  );
  if (key.rowCount === null) {
    if (heading !== null) return heading;
    if (key.isBlank(0)) return "";
    const row = hostRow(answer(rowArguments(scalars, 0)), dateOf);
    return row.length === 1 ? row[0] : [[...row]];
  }

  // A single value beside a range is wrong for every row or for none: it throws.
  for (const scalar of scalars) {
    const unitVaries = (unitScalar(scalar, scalars)?.rowCount ?? null) !== null;
    if (scalar.rowCount === null && !unitVaries) readIn(scalar, scalars, 0);
  }
  const rows: (readonly unknown[])[] = [];
  for (let row = 0; row < key.rowCount; row++) {
    if (row === 0 && heading !== null) rows.push([heading]);
    else if (key.isBlank(row)) rows.push([""]);
    else rows.push(answeredRow(() => hostRow(answer(rowArguments(scalars, row)), dateOf)));
  }
  return rows.length === 0 ? (heading ?? "") : rectangle(rows);
}

function answeredRow(work: () => readonly unknown[]): readonly unknown[] {
  try {
    return work();
  } catch (error) {
    if (isBadInput(error) || error instanceof NoConvergence) return [badRow(error.message)];
    throw error;
  }
}

function answerWhole(record: FunctionRecord, args: readonly unknown[], { dayOf, dateOf }: RunnerHost): unknown {
  if (record.compute.kind !== "whole") throw new Error(`${record.name} answers row by row.`);
  const read = readAll(record, args, dayOf);
  const scalars: Scalar[] = [];
  for (const one of read.values()) {
    if (one.kind !== "scalar" || one.scalar.argument.kind === "key") continue;
    const { argument, rowCount } = one.scalar;
    if (rowCount !== null) {
      throw new BadInput(
        "not-one-value",
        `${argument.name} is a range of ${rowCount} rows. ${record.name} answers with a table of its own: give one value.`,
      );
    }
    scalars.push(one.scalar);
  }
  const keys = (name: string) => {
    const at = record.args.findIndex((argument) => argument.name === name);
    return readKeys(args[at], name, dayOf);
  };
  const answer = record.compute.answer(fixedArguments(read, keys), rowArguments(scalars, 0));
  const rows = rectangle(answer.map((row) => hostRow(row, dateOf)));
  return rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : rows;
}

function readKeys(raw: unknown, name: string, dayOf: DayReader): readonly Key[] {
  const rows = withoutBlankEnd(rowsOf(raw) ?? [[raw]]);
  return rows.flatMap((row): Key[] => {
    if (isBlankCell(row[0])) return [];
    try {
      return [{ name: readText(readCell(row[0], dayOf), name) ?? "" }];
    } catch (error) {
      if (isBadInput(error)) return [{ name: null, reason: error.message }];
      throw error;
    }
  });
}
