/** Which column of one's own list is which, as Settings keeps it: written, read back, and refused when it is not that. */

import { describe, expect, test } from "vitest";
import { columnMapText, parseColumnMap } from "../../src/sheet/column-map.ts";
import { refusal } from "../core/refusal.ts";

test("columns that are not mapped are left out, the others stand in the order of the tab", () => {
  expect(columnMapText({ Kind: "", Note: "n", Plant: "Wer" })).toBe('Plant: "Wer"; Note: "n"');
});

describe("a map typed by hand", () => {
  test.each<[string, Record<string, string>]>([
    ['Plant: "Wer"', { Plant: "Wer" }],
    ['plant:"Wer";Pot ml :   "Topf"  ;  ', { Plant: "Wer", "Pot mL": "Topf" }],
    ['  Place: "Room";\nPLANT: "a; \\"b\\": c"\n', { Place: "Room", Plant: 'a; "b": c' }],
  ])("is read however it is spaced: %j", (text, map) => {
    expect(parseColumnMap(text)).toEqual(map);
  });

  test.each([
    "",
    "Plant = Wer",
    'Place: "Room"',
    'Plant: "Wer',
    'Plant: "Wer"; Colour: "x"',
    'Plant: "\\q"',
    'Place: "\\q"; Plant: "Wer"',
    'Plant: "Wer"x; Place: "Room"',
    'Plant: "Wer" "Room"',
  ])("is refused when it is none, with what stands there: %j", (text) => {
    const sentence = refusal(() => parseColumnMap(text));
    expect(sentence).toContain(`“Plant list columns” in Settings is “${text}”.`);
  });
});
