/** What a tab gets besides its cells, and only where nobody chose otherwise. */

import { describe, expect, test } from "vitest";
import { choice, day, nameOf, number, text } from "../../src/sheet/columns.ts";
import { dressColumns, offerNameLists } from "../../src/sheet/dress.ts";
import type { Block, TabLook, TabPort, TabSetup, WorkbookPort } from "../../src/sheet/port.ts";
import type { ReadyTab } from "../../src/sheet/setup.ts";
import type { TabSpec } from "../../src/sheet/spec.ts";

const BARE: TabLook = { frozenRows: 0, notes: [], formats: [], ruled: [], warnings: [] };
const COLUMNS = [
  text("Plant", "Who."),
  number("Amount mL", "How much.", { unit: "mL" }),
  day("Date", "When."),
  choice("Kind", "Which.", ["a", "b"]),
  text("Lot", "As printed.", { format: "@" }),
];
const SPEC: TabSpec = { name: "Feeds", key: "Plant", columns: COLUMNS, help: "" };
const AT = new Map(COLUMNS.map(({ heading }, index) => [heading, index + 1]));
const said = ({ row, column, rows, columns }: Block) => `${row},${column} ${rows}x${columns}`;

/** A setup that says what is asked of it. */
function recorder(look: TabLook, done: string[]): TabSetup {
  return {
    look: () => look,
    freezeHeading: () => done.push("freeze"),
    mark: () => done.push("mark"),
    note: (column, words) => done.push(`note ${column} ${words}`),
    offerChoices: (column, choices) => done.push(`offer ${column} ${choices.join("|")}`),
    offerNames: (column, from, at) => done.push(`names ${column} from ${from.name} ${at}`),
    format: (column, pattern) => done.push(`format ${column} ${pattern}`),
    warnOnEdit: (block, words) => done.push(`warn ${said(block)} ${/formulas/.test(words) ? "formulas" : "headings"}`),
    flagFormulas: (columns) => done.push(`flag ${columns.join()}`),
  } as Partial<TabSetup> as TabSetup;
}

interface Given {
  readonly look?: Partial<TabLook>;
  readonly fresh?: readonly string[];
  readonly spec?: Partial<TabSpec>;
  readonly at?: ReadonlyMap<string, number>;
  /** Formulas below the heading row. */
  readonly formulas?: readonly (readonly string[])[];
  /** In how many of those rows something shows; in all when absent. */
  readonly filled?: number;
}

function dressed({ look = {}, fresh = [], spec = {}, at = AT, formulas = [], filled }: Given = {}): string[] {
  const done: string[] = [];
  const width = Math.max(5, ...formulas.map((row) => row.length));
  const values = [
    Array.from({ length: width }, () => "x"),
    ...formulas.slice(0, filled).map((row) => row.map(() => 1)),
  ];
  const readFormulas = ({ row, rows, columns }: Block) => {
    if (rows < 1 || columns < 1) throw new Error("a block without cells");
    return Array.from({ length: rows }, (_, index) =>
      Array.from({ length: columns }, (_each, column) => formulas[row - 2 + index]?.[column] ?? ""),
    );
  };
  const ready = {
    ...{ spec: { ...SPEC, ...spec }, tab: { readFormulas } as unknown as TabPort, values, width },
    ...{ columns: { tabName: "Feeds", at, doubts: new Map() }, fresh: new Set(fresh) },
  };
  dressColumns(recorder({ ...BARE, ...look }, done), ready);
  return done;
}
const only = (done: readonly string[], what: string) => done.filter((each) => each.startsWith(what));

describe("a bare tab", () => {
  test("gets a frozen heading, notes with the unit, formats of its days, what can be picked, and a warning", () => {
    expect(dressed()).toEqual([
      "freeze",
      "note 1 Who.",
      "note 2 How much. In mL.",
      "note 3 When.",
      "format 3 yyyy-mm-dd",
      "note 4 Which.",
      "offer 4 a|b",
      "note 5 As printed.",
      "warn 1,1 1x5 headings",
    ]);
  });

  test("is not frozen again", () => {
    expect(only(dressed({ look: { frozenRows: 1 } }), "freeze")).toEqual([]);
  });

  test("gets a text format only in columns written just now, for it would change how filled cells are read", () => {
    expect(only(dressed({ fresh: ["Lot", "Plant"] }), "format")).toEqual(["format 3 yyyy-mm-dd", "format 5 @"]);
  });

  test("gets nothing for a column that is not there", () => {
    const at = new Map([...AT].filter(([heading]) => heading !== "Date"));
    expect(dressed({ at }).filter((each) => / (3|undefined|NaN) /.test(each))).toEqual([]);
  });

  test("has its formulas flagged when it is a log", () => {
    expect(only(dressed(), "flag")).toEqual([]);
    expect(only(dressed({ spec: { alsoKeys: ["Date"] } }), "flag")).toEqual(["flag 1,2,3,4,5"]);
  });
});

test("what somebody chose stays: notes, formats, rules, frozen rows", () => {
  const look = {
    frozenRows: 2,
    notes: ["", "mine"],
    formats: ["", "", "d.m.yy", "", "General"],
    ruled: [false, false, false, true],
  };
  expect(dressed({ look, fresh: ["Lot"] })).toEqual([
    "note 1 Who.",
    "note 3 When.",
    "note 4 Which.",
    "note 5 As printed.",
    "format 5 @",
    "warn 1,1 1x5 headings",
  ]);
  const day3 = (format: string) => only(dressed({ look: { formats: ["", "", format] } }), "format 3");
  expect([day3("General"), day3("0.###############"), day3("0.00")]).toEqual([
    ["format 3 yyyy-mm-dd"],
    ["format 3 yyyy-mm-dd"],
    [],
  ]);
});

describe("warnings", () => {
  const ours = '=FEED_LEFT(A1:A, "x")';
  const warning = (text: string, block: Block, stretched: string[]) => ({
    text,
    block,
    stretch: (to: Block) => stretched.push(said(to)),
  });
  const cells = (row: number, column: number, rows: number, columns: number): Block => ({ row, column, rows, columns });
  const HEADINGS = "Stillroot: headings, by which columns are found";
  const FORMULAS = "Stillroot: formulas";

  test("stand over our formulas from the first to the last of a column, in the last column too", () => {
    const formulas = [
      ["", "", "", "", "", ours],
      ["", "=1+1", "", "", "", "=SUM(A2)"],
      ["", "", "=pot_due (A1)", "", "", ours],
      ["=MYFEED_X(1)", "=FEED_LEFT", "", "", "", ""],
    ];
    expect(only(dressed({ formulas }), "warn")).toEqual([
      "warn 1,1 1x6 headings",
      "warn 4,3 1x1 formulas",
      "warn 2,6 3x1 formulas",
    ]);
    expect(only(dressed({ formulas: [[ours, "", "", "", ""]] }), "warn")[1]).toBe("warn 2,1 1x1 formulas");
    // Below the last row in which something shows nothing is looked at.
    expect(only(dressed({ formulas: [[ours], [ours], [ours]], filled: 1 }), "warn")[1]).toBe("warn 2,1 1x1 formulas");
  });

  test.each<[string, Block, string, readonly string[], number]>([
    ["as it is", cells(1, 1, 1, 5), HEADINGS, [], 0],
    ["grown to the right", cells(1, 1, 1, 4), HEADINGS, ["1,1 1x5"], 0],
    ["grown to the left", cells(1, 5, 1, 3), HEADINGS, ["1,1 1x7"], 0],
    ["kept where it reaches further down", cells(1, 2, 3, 4), HEADINGS, ["1,1 3x5"], 0],
    ["left alone when it only touches on the right", cells(1, 6, 1, 2), HEADINGS, [], 1],
    ["left alone when it is about something else", cells(1, 1, 1, 4), "Mine", [], 1],
  ])("that are there over headings: %s", (_, block, text, stretches, added) => {
    const stretched: string[] = [];
    const done = dressed({ look: { warnings: [warning(text, block, stretched)] } });
    expect(stretched).toEqual(stretches);
    expect(only(done, "warn")).toHaveLength(added);
  });

  test.each<[string, Block, readonly string[], number]>([
    ["grown downwards", cells(2, 3, 1, 1), ["2,3 3x1"], 0],
    ["grown upwards", cells(4, 3, 4, 1), ["3,3 5x1"], 0],
    ["over more than that", cells(2, 2, 9, 3), [], 0],
    ["of the column on the left", cells(3, 2, 2, 1), [], 1],
    ["of the column on the right", cells(3, 4, 2, 1), [], 1],
  ])("that are there over formulas: %s", (_, block, stretches, added) => {
    const stretched: string[] = [];
    const formulas = [[], ["", "", ours], ["", "", ours]].map((row) => [...row, ...Array(5 - row.length).fill("")]);
    const done = dressed({ formulas, look: { warnings: [warning(FORMULAS, block, stretched)] } });
    expect(stretched).toEqual(stretches);
    expect(only(done, "warn").filter((each) => each.endsWith("formulas"))).toHaveLength(added);
  });
});

describe("names of other tabs", () => {
  const columns = (at: Readonly<Record<string, number>>) => ({
    ...{ tabName: "", at: new Map(Object.entries(at)), doubts: new Map() },
  });
  const ready = (
    name: "Plants" | "Events" | "Care log",
    key: string,
    at: Readonly<Record<string, number>>,
  ): ReadyTab => {
    const refer =
      name === "Care log" ? [nameOf("Plants", "Plant", ""), nameOf("Events", "Event", ""), text("Who", "")] : [];
    return {
      ...{ spec: { name, key, columns: refer, help: "" }, tab: { name } as TabPort, columns: columns(at) },
      ...{ fresh: new Set(), values: [], width: 9 },
    };
  };
  const offered = (
    tabs: readonly ReadyTab[],
    own: Parameters<typeof offerNameLists>[2] = null,
    ruled: boolean[] = [],
  ) => {
    const done: string[] = [];
    let looks = 0;
    const look = () => {
      looks++;
      return { ...BARE, ruled };
    };
    const setup = () => ({ ...recorder(BARE, done), look });
    offerNameLists({ setup } as unknown as WorkbookPort, tabs, own);
    return [...done, `${looks} looks`];
  };
  const LOG = ready("Care log", "Id", { Id: 1, Plant: 3, Event: 4, Who: 5 });
  const PLANTS = ready("Plants", "Plant", { Plant: 2 });
  const EVENTS = ready("Events", "Event", { Event: 1 });

  test("are offered from their key column, wherever it stands, where no rule is", () => {
    expect(offered([PLANTS, EVENTS, LOG])).toEqual(["names 3 from Plants 2", "names 4 from Events 1", "1 looks"]);
    expect(offered([EVENTS, PLANTS, LOG], null, [false, false, true])).toEqual(["names 4 from Events 1", "1 looks"]);
  });

  test("are not offered to a column, or from a tab or key column, that is not there", () => {
    const short = ready("Care log", "Id", { Id: 1, Event: 4 });
    expect(offered([PLANTS, EVENTS, short])).toEqual(["names 4 from Events 1", "1 looks"]);
    expect(offered([LOG, EVENTS])).toEqual(["names 4 from Events 1", "1 looks"]);
    expect(offered([ready("Plants", "Plant", {}), LOG])).toEqual(["1 looks"]);
    expect(offered([PLANTS, EVENTS, ready("Care log", "Id", { Id: 1, Who: 2 })])).toEqual(["0 looks"]);
  });

  test("of plants come from a list of one's own where there is one with that column", () => {
    const own = (at: Readonly<Record<string, number>>) => ({
      ...{ tab: { name: "Grün" } as TabPort, values: [], columns: columns(at) },
    });
    expect(offered([PLANTS, EVENTS, LOG], own({ Plant: 7 }))).toEqual([
      "names 3 from Grün 7",
      "names 4 from Events 1",
      "1 looks",
    ]);
    expect(offered([PLANTS, EVENTS, LOG], own({ Kind: 1 }))).toEqual(["names 4 from Events 1", "1 looks"]);
  });
});
