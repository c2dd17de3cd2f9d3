/** What a cell can hold, each kind told from its neighbours. */

import { describe, expect, it } from "vitest";
import { type Cell, headingKey, nameKey, readCell } from "../../src/core/cell.ts";

/** A host's date stands as { day }, an invalid one as { day: null }. */
const dayOf = (value: unknown) => (value as { day?: number | null }).day ?? null;

describe("readCell", () => {
  it.each<[unknown, Cell]>([
    ["", { kind: "blank" }],
    [null, { kind: "blank" }],
    [undefined, { kind: "blank" }],
    ["   ", { kind: "blank" }],
    [0, { kind: "number", value: 0 }],
    [-1.5, { kind: "number", value: -1.5 }],
    [Number.NaN, { kind: "error", text: "NaN" }],
    [Number.POSITIVE_INFINITY, { kind: "error", text: "Infinity" }],
    [false, { kind: "boolean", value: false }],
    [true, { kind: "boolean", value: true }],
    [" 0 ", { kind: "text", value: "0" }],
    ["false", { kind: "text", value: "false" }],
    [" #N/A ", { kind: "error", text: "#N/A" }],
    ["#N/A in bed 3", { kind: "text", value: "#N/A in bed 3" }],
    ["see #N/A", { kind: "text", value: "see #N/A" }],
    ["#1", { kind: "text", value: "#1" }],
    [{ day: 20_000 }, { kind: "day", day: 20_000 }],
    [{ day: 0 }, { kind: "day", day: 0 }],
    [{ day: null }, { kind: "error", text: "an error" }],
    [new Error("#REF!"), { kind: "error", text: "an error" }],
  ])("%#: %j", (raw, cell) => expect(readCell(raw, dayOf)).toEqual(cell));

  // The errors a sheet shows, by its own help on ERROR.TYPE and what came later (#SPILL!, #CALC!).
  it.each(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#ERROR!", "#SPILL!", "#CALC!"])(
    "%s is an error",
    (text) => expect(readCell(text, dayOf)).toEqual({ kind: "error", text }),
  );
});

it("headings and names are compared without what people do not see", () => {
  expect(headingKey(" Pot  mL\n")).toBe("potml");
  expect(nameKey("  Tall \n Fern ")).toBe("tall fern");
  expect(nameKey("TallFern")).not.toBe(nameKey("Tall Fern"));
});
