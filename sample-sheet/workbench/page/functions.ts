/** The shipped custom functions in the grid's engine: cells go in as on the host, answers and errors come out. */

import type { ICellData, Injector, Nullable, ObjectMatrix } from "@univerjs/core";
import {
  ArrayValueObject,
  BaseFunction,
  type BaseReferenceObject,
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  type FunctionVariantType,
  IDescriptionService,
  type IFunctionInfo,
  IFunctionService,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/preset-sheets-core";
import { isDate, messageOf } from "../standin/book.ts";
import { isCellError, isDateFormat } from "../standin/grid.ts";
import { instantOfSerial, serialOfInstant } from "../standin/zone.ts";
import { cellValueOf } from "./cells.ts";
import type { Realm } from "./realm.ts";

const DATE_FORMAT = "yyyy-mm-dd";

export interface FunctionParts {
  readonly realm: Realm;
  readonly timeZone: string;
  /** What each failed cell says, by `placeKey`. */
  readonly failures: Map<string, string>;
}

export function placeKey(sheetId: string, row: number, column: number): string {
  return `${sheetId} ${row} ${column}`;
}

type Cells = ObjectMatrix<Nullable<ICellData>> | undefined;

/** A number as the script gets it: a Date of its realm when the cell's format shows a date. */
function scriptNumber(value: number, pattern: string, { realm, timeZone }: FunctionParts): unknown {
  return isDateFormat(pattern) ? realm.makeDate(instantOfSerial(value, timeZone)) : value;
}

function scriptValue(value: BaseValueObject, parts: FunctionParts): unknown {
  if (value.isNull()) return "";
  if (value.isError()) return (value as ErrorValueObject).getErrorType();
  const plain = value.getValue();
  return value.isNumber() ? scriptNumber(Number(plain), value.getPattern(), parts) : plain;
}

/** All cells of a reference, blank ones as "", to its last row whether filled or not. */
function referenceRows(reference: BaseReferenceObject, parts: FunctionParts): unknown[][] {
  const { startRow, endRow, startColumn, endColumn } = reference.getRangePosition();
  const sheet = reference.getCurrentActiveSheetData()?.cellData as Cells;
  const layers: Cells[] = [
    reference.getCurrentRuntimeSheetData(),
    reference.getCurrentRuntimeActiveArrayFormulaCellData(),
    reference.getCurrentActiveArrayFormulaCellData(),
    sheet,
  ];
  const filled = Math.max(...layers.map((layer) => layer?.getLength() ?? 0));
  const styles = reference.getUnitStylesData()[reference.getUnitId()];
  const pattern = (cell: Nullable<ICellData>): string => (cell && styles?.getStyleByCell(cell)?.n?.pattern) || "";
  const one = (row: number, column: number): unknown => {
    const cell = reference.getCellData(row, column);
    const value = cellValueOf(cell);
    if (value === null) return "";
    if (isCellError(value)) return value.error;
    if (typeof value !== "number") return value;
    return scriptNumber(value, pattern(sheet?.getValue(row, column)) || pattern(cell), parts);
  };
  const rows: unknown[][] = [];
  for (let row = startRow; row <= endRow; row++) {
    const line: unknown[] = [];
    for (let column = startColumn; column <= endColumn; column++) line.push(row < filled ? one(row, column) : "");
    rows.push(line);
  }
  return rows;
}

/** One cell goes as its value, a range as rows: the host does the same. */
function scriptArgument(given: FunctionVariantType, parts: FunctionParts): unknown {
  if (given.isReferenceObject()) {
    const reference = given as BaseReferenceObject;
    if (reference.getForcedSheetName() !== "" && !reference.getForcedSheetId()) return "#REF!";
    const rows = referenceRows(reference, parts);
    return rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : parts.realm.rows(rows);
  }
  const value = given as BaseValueObject;
  if (!value.isArray()) return scriptValue(value, parts);
  const rows = (value as ArrayValueObject)
    .getArrayValue()
    .map((row) => row.map((cell) => (cell ? scriptValue(cell, parts) : "")));
  return parts.realm.rows(rows);
}

function gridValue(value: unknown, { timeZone }: FunctionParts): BaseValueObject {
  if (typeof value === "number") {
    return Number.isFinite(value) ? NumberValueObject.create(value) : ErrorValueObject.create(ErrorType.NUM);
  }
  if (typeof value === "boolean") return BooleanValueObject.create(value);
  if (isDate(value)) return NumberValueObject.create(serialOfInstant(value.getTime(), timeZone), DATE_FORMAT);
  return StringValueObject.create(value === null || value === undefined ? "" : String(value));
}

class ShippedFunction extends BaseFunction {
  override needsReferenceObject = true;
  override minParams = 0;
  override maxParams = 255;
  private readonly parts: FunctionParts;

  constructor(name: string, parts: FunctionParts) {
    super(name);
    this.parts = parts;
  }

  override calculate(...given: BaseValueObject[]) {
    const { parts } = this;
    const key = placeKey(this.subUnitId ?? "", this.row, this.column);
    parts.failures.delete(key);
    try {
      const args = given.map((variant) => scriptArgument(variant, parts));
      const answer = parts.realm.run(String(this.name), args, "formula");
      if (!Array.isArray(answer)) return gridValue(answer, parts);
      const rows = answer.map((row: unknown) =>
        (Array.isArray(row) ? row : [row]).map((cell) => gridValue(cell, parts)),
      );
      const columns = Math.max(0, ...rows.map((row) => row.length));
      if (columns === 0) return StringValueObject.create("");
      return ArrayValueObject.create({
        calculateValueList: rows,
        rowCount: rows.length,
        columnCount: columns,
        unitId: this.unitId ?? "",
        sheetId: this.subUnitId ?? "",
        row: this.row,
        column: this.column,
      });
    } catch (thrown) {
      parts.failures.set(key, messageOf(thrown));
      return ErrorValueObject.create(ErrorType.ERROR);
    }
  }
}

/** Makes the names known with their words, and puts in executors that see what the host would hand over. */
export function registerFunctions(injector: Injector, words: readonly IFunctionInfo[], parts: FunctionParts): void {
  injector.get(IDescriptionService).registerDescriptions([...words]);
  const service = injector.get(IFunctionService);
  for (const { functionName } of words) service.registerExecutors(new ShippedFunction(functionName, parts));
}
