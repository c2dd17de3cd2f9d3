/** Moves from soil, against dates counted by hand on a calendar; the periods are common practice, no source. */

import { describe, expect, test } from "vitest";
import { dayFromIso, isoFromDay } from "../../src/core/calendar.ts";
import { FULL_REASON, LOOK_REASON, type MoveRow, movesFromSoil, WEAK_REASON } from "../../src/core/move.ts";

const row = (iso: string, event: string, reason = "", plant = "Fern"): MoveRow => ({
  day: dayFromIso(iso) ?? Number.NaN,
  plant,
  event,
  reason,
});
const said = (rows: readonly MoveRow[], asOf = "2026-03-01") =>
  movesFromSoil(rows, dayFromIso(asOf) ?? Number.NaN).map(({ plant, done, due, lookForRotFrom }) => ({
    plant,
    done: done.map(({ step, day }) => `${step} ${isoFromDay(day)}`),
    due: due.map(({ step, day }) => `${step} ${isoFromDay(day)}`),
    rot: lookForRotFrom === null ? null : isoFromDay(lookForRotFrom),
  }));

const washed = row("2026-02-01", "Move from soil");
const weak = row("2026-02-01", "Solution change", WEAK_REASON);

describe("a move from soil", () => {
  test("asks for weak solution at once, then for a look after two weeks", () => {
    expect(said([washed])).toEqual([
      { plant: "Fern", done: ["wash 2026-02-01"], due: ["weak 2026-02-01", "roots 2026-02-15"], rot: "2026-03-15" },
    ]);
    expect(said([weak, washed])[0]?.due).toEqual(["weak 2026-02-15", "roots 2026-02-15"]);
  });

  test("asks for a refill every two weeks and a look every week until roots are there", () => {
    const rows = [
      washed,
      weak,
      row("2026-02-16", "solution  change", WEAK_REASON.toUpperCase()),
      row("2026-02-17", "Note", LOOK_REASON),
    ];
    expect(said(rows)[0]).toEqual({
      plant: "Fern",
      done: ["wash 2026-02-01", "weak 2026-02-01", "weak 2026-02-16", "look 2026-02-17"],
      due: ["roots 2026-02-24", "weak 2026-03-02"],
      rot: "2026-03-15",
    });
  });

  test("comes to full strength with the first water roots, but not before two weeks", () => {
    expect(said([washed, weak, row("2026-02-10", "New root")])[0]).toMatchObject({
      due: ["weak 2026-02-15", "full 2026-02-15"],
      rot: null,
    });
    expect(said([washed, weak, row("2026-02-20", "New root")])[0]?.due).toEqual(["weak 2026-02-15", "full 2026-02-20"]);
    const full = row("2026-02-21", "Solution change", FULL_REASON);
    expect(said([full, washed, weak, row("2026-02-20", "New root")])[0]).toMatchObject({ due: [], rot: null });
  });

  test("begins anew with another move, and leaves out what came before it and other plants", () => {
    const rows = [
      row("2025-05-01", "Move from soil"),
      row("2025-06-01", "Solution change", FULL_REASON),
      washed,
      row("2026-01-31", "New root"),
      row("2026-02-03", "Solution change"),
      row("2026-01-05", "move from soil", "", " Hoya "),
      row("2026-01-07", "New root", "", "Arum"),
      row("2026-02-01", "Repot", "", ""),
    ];
    expect(said(rows).map(({ plant, done }) => `${plant}: ${done.join(", ")}`)).toEqual([
      "Hoya: wash 2026-01-05",
      "Fern: wash 2026-02-01",
    ]);
    expect(said([])).toEqual([]);
  });

  test("is told by its event, whatever the reason, and by the words that stand in logs", () => {
    const rows = [
      row("2026-02-01", "Move from soil", "It stood in wet soil"),
      row("2026-02-01", "Solution change", "Weak solution after move from soil"),
      row("2026-02-08", "Note", "No water roots yet after move from soil"),
      row("2026-02-09", "Note", "Greener"),
      row("2026-02-09", "New root", "At last"),
      row("2026-02-16", "Solution change", "Full strength after move from soil"),
      row("2026-02-09", "Move from soil", "", " "),
    ];
    expect(said(rows)).toEqual([
      {
        plant: "Fern",
        done: ["wash 2026-02-01", "weak 2026-02-01", "look 2026-02-08", "roots 2026-02-09", "full 2026-02-16"],
        due: [],
        rot: null,
      },
    ]);
  });

  test("steps of one day stand in their order, the newest washing counts, plants in the order of theirs", () => {
    const day = "2026-02-01";
    const rows = [
      row(day, "Solution change", FULL_REASON),
      row(day, "New root"),
      row(day, "Note", LOOK_REASON),
      weak,
      washed,
      row("2026-01-10", "Move from soil"),
      row("2026-02-03", "Move from soil", "", "Hoya"),
      row("2026-02-02", "Move from soil", "", "Arum"),
      row("2026-02-04", "Move from soil", "", "Ivy"),
    ];
    expect(said(rows).map(({ plant }) => plant)).toEqual(["Fern", "Arum", "Hoya", "Ivy"]);
    expect(said(rows)[0]?.done.map((step) => step.split(" ")[0])).toEqual(["wash", "weak", "look", "roots", "full"]);
  });

  test("is over twelve weeks after the washing, logged to its end or not, and later new roots are none of it", () => {
    // 1 February and 84 days: 26 April (27 days to the end of February, 31 in March, 26 more).
    expect(said([washed], "2026-04-26")).toHaveLength(1);
    expect(said([washed], "2026-04-27")).toEqual([]);
    const rows = [washed, row("2026-02-20", "New root"), row("2026-02-10", "New root")];
    expect(said(rows)[0]?.done).toEqual(["wash 2026-02-01", "roots 2026-02-10"]);
  });
});
