/** What is put right after a write was caught in a rearrangement: the tab before, the tab now, and the tab as it should be. */

import { describe, expect, test } from "vitest";
import type { SheetRecord } from "../../src/sheet/append.ts";
import type { Mark } from "../../src/sheet/port.ts";
import type { Landing } from "../../src/sheet/settle.ts";
import {
  A,
  appended,
  B,
  BLANK,
  C,
  FILLED,
  fine,
  HEAD,
  LIME,
  mended,
  PALM,
  type Row,
  type Sheet,
  TYPED,
} from "./mending.ts";

describe("a new row", () => {
  const before = { rows: [A, B] };
  const one = appended([A, B], PALM);

  test.each<[string, Sheet, readonly Row[]]>([
    [
      "that stands where it belongs stays",
      { rows: [A, B, ["new-1", "Palm", "new", ""]] },
      [A, B, ["new-1", "Palm", "new", ""]],
    ],
    [
      "written while a column came in on the left goes one to the right",
      {
        head: ["", ...HEAD],
        rows: [
          ["", ...A],
          ["", ...B],
          ["new-1", "Palm", "new", "", ""],
        ],
      },
      [
        ["", ...A],
        ["", ...B],
        ["", "new-1", "Palm", "new", ""],
      ],
    ],
    [
      "written while a column came in between is parted there",
      {
        head: ["Id", "", "Plant", "Note", "Mine"],
        rows: [
          ["a-1", "", "Fern", "one", "x"],
          ["b-1", "", "Ivy", "two", "y"],
          ["new-1", "Palm", "new", "", ""],
        ],
      },
      [
        ["a-1", "", "Fern", "one", "x"],
        ["b-1", "", "Ivy", "two", "y"],
        ["new-1", "", "Palm", "new", ""],
      ],
    ],
    [
      "written while a column was moved follows it",
      {
        head: ["Note", "Id", "Plant", "Mine"],
        rows: [
          ["one", "a-1", "Fern", "x"],
          ["two", "b-1", "Ivy", "y"],
          ["new-1", "Palm", "new", ""],
        ],
      },
      [
        ["one", "a-1", "Fern", "x"],
        ["two", "b-1", "Ivy", "y"],
        ["new", "new-1", "Palm", ""],
      ],
    ],
    [
      "that strayed under somebody else's heading leaves it",
      {
        head: ["Mine", "Id", "Plant", "Note"],
        rows: [
          ["x", "a-1", "Fern", "one"],
          ["y", "b-1", "Ivy", "two"],
          ["new-1", "Palm", "new", ""],
        ],
      },
      [
        ["x", "a-1", "Fern", "one"],
        ["y", "b-1", "Ivy", "two"],
        ["", "new-1", "Palm", "new"],
      ],
    ],
    [
      "that was sorted in between is left there",
      { rows: [B, ["new-1", "Palm", "new", ""], A] },
      [B, ["new-1", "Palm", "new", ""], A],
    ],
    [
      "of which a cell was changed by hand meanwhile is as it was sent",
      { rows: [A, B, ["new-1", "Date palm", "new", "m"]] },
      [A, B, ["new-1", "Palm", "new", "m"]],
    ],
  ])("%s", (_, now, rows) => {
    expect(mended({ before, now, landing: one })).toEqual({ rows, ...fine });
  });

  test("that fell on a row gives it back, and is to be written again", () => {
    const now = { rows: [BLANK, A, ["new-1", "Palm", "new", "y"]] };
    expect(mended({ before, now, landing: one })).toEqual({
      rows: [BLANK, A, B],
      again: ["new-1"],
      refused: false,
      restored: [2],
    });
  });

  test("that fell on a row and beside its columns gives it back whole", () => {
    const now = {
      head: ["", ...HEAD],
      rows: [
        ["", ...BLANK],
        ["", ...A],
        ["new-1", "Palm", "new", "two", "y"],
      ],
    };
    expect(mended({ before, now, landing: one })).toEqual({
      rows: [
        ["", ...BLANK],
        ["", ...A],
        ["", ...B],
      ],
      again: ["new-1"],
      refused: false,
      restored: [2],
    });
  });

  test("that fell on one typed by hand gives that back", () => {
    const rows = [A, TYPED];
    const now = { rows: [BLANK, A, ["new-1", "Palm", "new", ""]] };
    expect(mended({ before: { rows }, now, landing: appended(rows, PALM) })).toEqual({
      rows: [BLANK, A, TYPED],
      again: ["new-1"],
      refused: false,
      restored: [2],
    });
  });

  test("one of two that fell on a row is written again, the other stays", () => {
    const now = { rows: [BLANK, A, ["new-1", "Palm", "new", "y"], ["new-2", "Lime", "newer", ""]] };
    expect(mended({ before, now, landing: appended([A, B], PALM, LIME) })).toEqual({
      rows: [BLANK, A, B, ["new-2", "Lime", "newer", ""]],
      again: ["new-1"],
      refused: false,
      restored: [2],
    });
  });

  test("two that fell on two rows give both back in their order, whatever order the new ones stand in", () => {
    const old = [A, B, C];
    const now = { rows: [BLANK, BLANK, A, ["new-2", "Lime", "newer", "y"], ["new-1", "Palm", "new", "z"]] };
    const { rows, again, restored } = mended({ before: { rows: old }, now, landing: appended(old, PALM, LIME) });
    expect(rows).toEqual([BLANK, BLANK, A, B, C]);
    expect(again.sort()).toEqual(["new-1", "new-2"]);
    expect(restored).toEqual([2, 3]);
  });

  test("that stands nowhere is to be written again", () => {
    expect(mended({ before, now: { rows: [A, B] }, landing: one })).toEqual({
      rows: [A, B],
      again: ["new-1"],
      refused: false,
      restored: [],
    });
  });

  test("is known by all that was written where its Id strayed, and not by a part of it", () => {
    const head = ["Plant", "Note", "Id", "Mine"];
    const [a, b] = [
      ["Fern", "one", "a-1", "x"],
      ["Palm", "new", "b-1", "y"],
    ];
    const now = { head, rows: [a, b, ["new-1", "Palm", "new", ""]] };
    const old = [A, ["b-1", "Palm", "new", "y"]];
    expect(mended({ before: { rows: old }, now, landing: appended(old, PALM) })).toEqual({
      rows: [a, b, ["Palm", "new", "new-1", ""]],
      ...fine,
    });
  });

  test("whose cell is blank leaves what somebody typed there meanwhile", () => {
    const landing = appended([A, B], { Id: "new-1", Plant: "Palm", Note: null });
    const now = { rows: [A, B, ["new-1", "Palm", "typed", ""]] };
    expect(mended({ before, now, landing })).toEqual({ rows: now.rows, ...fine });
  });

  test("with a day is known by it", () => {
    const day: SheetRecord = { Id: "new-1", Plant: { day: 20_000 }, Note: "new" };
    const now = {
      head: ["", ...HEAD],
      rows: [
        ["", ...A],
        ["", ...B],
        ["new-1", new Date(20_000), "new", "", ""],
      ],
    };
    const { rows } = mended({ before, now, landing: appended([A, B], day) });
    expect(rows[2]).toEqual(["", "new-1", { day: 20_000 }, "new", ""]);
  });
});

describe("a row that is filled in", () => {
  const before = { rows: [A, B] };

  test.each<[string, Sheet, readonly Row[]]>([
    ["where it belongs stays", { rows: [A, ["b-1", "Ivy", "filled", "y"]] }, [A, ["b-1", "Ivy", "filled", "y"]]],
    [
      "while a row came in further up is filled where it is now, and the one above gets its own back",
      { rows: [BLANK, ["a-1", "Fern", "filled", "x"], B] },
      [BLANK, A, ["b-1", "Ivy", "filled", "y"]],
    ],
    [
      "while a row came in just there is filled, and the blank one is blank again",
      { rows: [A, ["", "", "filled", ""], B] },
      [A, BLANK, ["b-1", "Ivy", "filled", "y"]],
    ],
    [
      "while a column came in is filled in its own",
      {
        head: ["", ...HEAD],
        rows: [
          ["", ...A],
          ["", "b-1", "filled", "two", "y"],
        ],
      },
      [
        ["", ...A],
        ["", "b-1", "Ivy", "filled", "y"],
      ],
    ],
    [
      "while one without a heading came in just there is filled in its own, and that one cleared",
      {
        head: ["Id", "Plant", "", "Note", "Mine"],
        rows: [
          ["a-1", "Fern", "", "one", "x"],
          ["b-1", "Ivy", "filled", "two", "y"],
        ],
      },
      [
        ["a-1", "Fern", "", "one", "x"],
        ["b-1", "Ivy", "", "filled", "y"],
      ],
    ],
    [
      "while somebody else's column was moved there gives that its own back",
      {
        head: ["Id", "Plant", "Mine", "Note"],
        rows: [
          ["a-1", "Fern", "x", "one"],
          ["b-1", "Ivy", "filled", "two"],
        ],
      },
      [
        ["a-1", "Fern", "x", "one"],
        ["b-1", "Ivy", "y", "filled"],
      ],
    ],
    [
      "while rows were sorted is filled where it is now",
      { rows: [B, ["a-1", "Fern", "filled", "x"]] },
      [["b-1", "Ivy", "filled", "y"], A],
    ],
    [
      "while rows and columns moved is filled in its place, both ways",
      {
        head: ["", ...HEAD],
        rows: [
          ["", ...B],
          ["", "a-1", "filled", "one", "x"],
        ],
      },
      [
        ["", "b-1", "Ivy", "filled", "y"],
        ["", ...A],
      ],
    ],
  ])("%s", (_, now, rows) => {
    expect(mended({ before, now, landing: FILLED })).toEqual({ rows, ...fine });
  });

  test("gives one typed by hand its own back", () => {
    const rows = [A, B, TYPED];
    const now = { rows: [A, ["", "Hoya", "filled", ""], B] };
    expect(mended({ before: { rows }, now, landing: FILLED }).rows).toEqual([A, TYPED, ["b-1", "Ivy", "filled", "y"]]);
  });

  test("that is gone is refused", () => {
    expect(mended({ before, now: { rows: [A] }, landing: FILLED })).toMatchObject({ refused: true, again: [] });
  });

  test("that somebody else filled meanwhile is refused, and nothing of theirs is written over", () => {
    const now = { rows: [A, ["b-1", "Ivy", "theirs", "y"]] };
    expect(mended({ before, now, landing: FILLED })).toEqual({ rows: now.rows, ...fine, refused: true });
  });

  test("that somebody cleared meanwhile is filled", () => {
    const now = { rows: [A, ["b-1", "Ivy", "", "y"]] };
    expect(mended({ before, now, landing: FILLED }).rows[1]).toEqual(["b-1", "Ivy", "filled", "y"]);
  });

  test("keeps what others typed into its other cells", () => {
    const now = { rows: [BLANK, ["a-1", "Fern", "filled", "x"], ["b-1", "Ivy, large", "two", "yy"]] };
    expect(mended({ before, now, landing: FILLED }).rows).toEqual([BLANK, A, ["b-1", "Ivy, large", "filled", "yy"]]);
  });
});

describe("other rows", () => {
  const before = { rows: [A, B, C] };
  const landing: Landing = { ...FILLED, rows: [3] };

  test("that hold the same word of their own keep it", () => {
    const own = ["a-1", "Fern", "filled", "x"];
    const now = { rows: [own, ["b-1", "Ivy", "filled", "y"], C] };
    expect(mended({ before: { rows: [own, B, C] }, now, landing }).rows).toEqual(now.rows);
  });

  test("that somebody changed meanwhile keep that", () => {
    const now = { rows: [BLANK, ["a-1", "Fern", "filled", "x"], B, ["c-1", "Moss", "changed", "zz"]] };
    expect(mended({ before, now, landing }).rows).toEqual([
      BLANK,
      A,
      ["b-1", "Ivy", "filled", "y"],
      ["c-1", "Moss", "changed", "zz"],
    ]);
  });

  test("whose Id stands twice are not guessed at", () => {
    const twice = ["a-1", "Fern two", "other", ""];
    const now = { rows: [BLANK, ["a-1", "Fern", "filled", "x"], twice, B] };
    const { rows } = mended({ before: { rows: [A, twice, B] }, now, landing: { ...FILLED, rows: [4] } });
    expect(rows[3]).toEqual(["b-1", "Ivy", "filled", "y"]);
    expect(rows[2]).toEqual(twice);
  });

  test("that were cleared in an earlier round get their own back, once blanks were put", () => {
    const now = { rows: [["a-1", "Fern", "", "x"], ["b-1", "Ivy", "filled", "y"], C] };
    expect(mended({ before, now, landing, put: [null] }).rows[0]).toEqual(A);
    expect(mended({ before, now, landing, put: ["two"] }).rows[0]).toEqual(now.rows[0]);
    expect(mended({ before, now, landing }).rows[0]).toEqual(now.rows[0]);
  });

  test("into which a value of an earlier round strayed get their own back", () => {
    const now = { rows: [["a-1", "Fern", "two", "x"], ["b-1", "Ivy", "filled", "y"], C] };
    expect(mended({ before, now, landing, put: ["two"] }).rows[0]).toEqual(A);
    expect(mended({ before, now, landing }).rows[0]).toEqual(now.rows[0]);
  });
});

describe("a row put back in an earlier round", () => {
  const before = { rows: [A, B] };
  const landing = appended([A, B], PALM);
  const put = ["b-1", "Ivy", "two"];

  test("is left alone where it stands whole", () => {
    const now = { rows: [BLANK, A, B, ["new-1", "Palm", "new", ""]] };
    expect(mended({ before, now, landing, put, restored: [2] })).toEqual({ rows: now.rows, ...fine, restored: [2] });
  });

  test("is put back once more where it was caught in the next rearrangement", () => {
    const now = { rows: [BLANK, A, ["b-1", "new", "two", "y"], ["new-1", "Palm", "new", ""]] };
    expect(mended({ before, now, landing, put, restored: [2] }).rows[2]).toEqual(B);
    const keyless = {
      head: ["", ...HEAD],
      rows: [
        ["", ...A],
        ["b-1", "Ivy", "two", "", "y"],
        ["", "new-1", "Palm", "new", ""],
      ],
    };
    expect(mended({ before, now: keyless, landing, put, restored: [2] }).rows[1]).toEqual(["", ...B]);
  });

  test("that is nowhere to be found is left", () => {
    const now = { rows: [A, ["new-1", "Palm", "new", ""], C] };
    expect(
      mended({ before: { rows: [A, B] }, now, landing: appended([A], PALM), restored: [2], put: ["zzz"] }).rows[2],
    ).toEqual(C);
  });
});

describe("columns", () => {
  const mark = (heading: string, column: number | null, tabId = 1): Mark => ({
    tabId,
    column,
    text: `column:Care log/${heading}`,
  });

  test("whose heading was deleted are followed by their marks, on their own tab", () => {
    const now: Sheet = {
      head: ["", "Id", "Plant", "", "Mine"],
      rows: [
        ["", ...A],
        ["", "b-1", "filled", "two", "y"],
      ],
      marks: [mark("Note", 1, 2), mark("Plant", 1, 2), mark("Id", 2), mark("Note", 4), mark("Plant", 3)],
    };
    expect(mended({ before: { rows: [A, B] }, now, landing: FILLED }).rows).toEqual([
      ["", ...A],
      ["", "b-1", "Ivy", "filled", "y"],
    ]);
  });

  test("of somebody else's under one heading are told apart by nothing, and only cleared of what is ours", () => {
    const head = ["Id", "Plant", "Mine", "Mine", "Note"];
    const before = {
      head: ["Id", "Plant", "Note", "Mine", "Mine"],
      rows: [
        ["a-1", "Fern", "one", "x", "x2"],
        ["b-1", "Ivy", "two", "y", "y2"],
      ],
    };
    const now = {
      head,
      rows: [
        ["a-1", "Fern", "x", "x2", "one"],
        ["b-1", "Ivy", "filled", "y2", "two"],
      ],
    };
    expect(mended({ before, now, landing: FILLED }).rows[1]).toEqual(["b-1", "Ivy", "", "y2", "filled"]);
  });
});
