/** Claims and trials: rows written once, changed by a row that points at the old one, results in blank cells only. */

import { describe, expect, test } from "vitest";
import type { ClaimEntry, TrialEntry } from "../../src/app/contract.ts";
import { newId, readyBook, type TestBook } from "../sheet/workbook.ts";

const claim = (given: Partial<ClaimEntry> = {}): ClaimEntry => ({
  id: newId(),
  claim: "Rain water makes more leaves",
  heardFrom: "Bo",
  yearsAtIt: 6,
  theirSetup: "Clay, balcony",
  ourSetup: "Clay, kitchen",
  agrees: "Clay",
  differs: "Light",
  status: "heard",
  heardOn: "2026-03-01",
  lookAgain: "2026-09-01",
  trial: "",
  outcome: "",
  note: "=1+1",
  ...given,
});
const trial = (given: Partial<TrialEntry> = {}): TrialEntry => ({
  id: newId(),
  question: "Does rain water make more leaves?",
  measure: "New leaves",
  started: "2026-03-09",
  ends: "2026-06-09",
  groupA: "rain",
  groupB: "tap",
  plantsA: ["Fern", "Ivy"],
  plantsB: ["Moss", "Reed"],
  design: "Pairs",
  draw: 48_213_377,
  worthSeeing: 2,
  note: "",
  ...given,
});
const rows = (book: TestBook) => book.reply({ ask: "records" });

describe("a claim", () => {
  test("is a row, once, as literal text", () => {
    const book = readyBook();
    const sent = { ask: "save claim", who: "Ana", claim: claim() } as const;
    expect(book.reply(sent)).toEqual({ written: 1, already: 0, differing: [] });
    expect(book.reply(sent)).toEqual({ written: 0, already: 1, differing: [] });
    expect(rows(book).claims.map(({ fields }) => fields)).toEqual([
      {
        Id: sent.claim.id,
        Claim: "Rain water makes more leaves",
        "Heard from": "Bo",
        "Years at it": 6,
        "Their setup": "Clay, balcony",
        "Our setup": "Clay, kitchen",
        Agrees: "Clay",
        Differs: "Light",
        Status: "heard",
        "Heard on": "2026-03-01",
        "Look again": "2026-09-01",
        Who: "Ana",
        Note: "=1+1",
      },
    ]);
  });

  test("of which nobody said how long or when has these cells blank", () => {
    const book = readyBook();
    const sent = claim({ yearsAtIt: null, heardOn: null, lookAgain: null });
    expect(book.reply({ ask: "save claim", who: "Ana", claim: sent })).toMatchObject({ written: 1 });
    const cells = ["Years at it", "Heard on", "Look again"].map((heading) => book.cell("Claims", 2, heading));
    expect(cells).toEqual([null, null, null]);
  });

  test("that changes is a new row, and the old one stays and no longer counts", () => {
    const book = readyBook();
    const first = claim();
    book.reply({ ask: "save claim", who: "Ana", claim: first });
    const next = claim({ status: "dropped", outcome: "Nothing came of it", corrects: first.id });
    book.reply({ ask: "save claim", who: "Bo", claim: next });
    expect(book.values("Claims")).toHaveLength(3);
    expect(rows(book).claims.map(({ fields }) => [fields.Id, fields.Status])).toEqual([[next.id, "dropped"]]);
  });

  test("of somebody two hundred years at it is refused", () => {
    const book = readyBook();
    expect(book.refusal({ ask: "save claim", who: "Ana", claim: claim({ yearsAtIt: 200 }) }).sentence).toBe(
      "Years at it is 200. Give a number from 0 to 100.",
    );
    expect(book.values("Claims")).toHaveLength(1);
  });
});

test("a claim or a trial taken back no longer counts; a change taken back brings the old claim back", () => {
  const book = readyBook();
  const [first, entry] = [claim(), trial()];
  const next = claim({ status: "dropped", corrects: first.id });
  book.reply({ ask: "save claim", who: "Ana", claim: first });
  book.reply({ ask: "save claim", who: "Ana", claim: next });
  book.reply({ ask: "save trial", who: "Ana", trial: entry });
  const back = (log: "Claims" | "Trials", takes: string) =>
    book.reply({ ask: "take back", who: "Ana", log, id: newId(), takes }).written;
  expect(back("Claims", next.id)).toBe(1);
  expect(rows(book).claims.map(({ fields }) => fields.Id)).toEqual([first.id]);
  expect(back("Trials", entry.id)).toBe(1);
  expect(rows(book).trials).toEqual([]);
  expect(book.values("Trials")).toHaveLength(3);
  expect(book.refusal({ ask: "take back", who: "Bo", log: "Claims", id: newId(), takes: first.id }).sentence).toContain(
    "only Ana can take it back",
  );
});

describe("a trial", () => {
  test("comes with its draw and the claim it tests, both once", () => {
    const book = readyBook();
    const first = claim();
    book.reply({ ask: "save claim", who: "Ana", claim: first });
    const entry = trial();
    const sent = {
      ask: "save trial",
      who: "Ana",
      trial: entry,
      claim: claim({ status: "trying", trial: entry.id, corrects: first.id }),
    } as const;
    expect(book.reply(sent)).toEqual({ written: 2, already: 0, differing: [] });
    expect(book.reply(sent)).toEqual({ written: 0, already: 2, differing: [] });
    const { claims, trials } = rows(book);
    expect(claims.map(({ fields }) => [fields.Status, fields.Trial])).toEqual([["trying", entry.id]]);
    expect(trials[0]?.fields).toEqual({
      Id: entry.id,
      Question: "Does rain water make more leaves?",
      Measure: "New leaves",
      Started: "2026-03-09",
      Ends: "2026-06-09",
      "Group A": "rain",
      "Group B": "tap",
      "Plants A": "Fern; Ivy",
      "Plants B": "Moss; Reed",
      Design: "Pairs",
      Draw: 48_213_377,
      "Worth seeing": 2,
      Who: "Ana",
    });
  });

  test("is signed with the name kept for this person when the request has none", () => {
    const book = readyBook();
    book.reply({ ask: "set name", who: "Cleo" });
    book.reply({ ask: "save trial", who: "", trial: trial(), claim: claim() });
    expect([book.cell("Trials", 2, "Who"), book.cell("Claims", 2, "Who")]).toEqual(["Cleo", "Cleo"]);
  });

  test("of no claim needs no tab of claims, and together its groups may be of different sizes", () => {
    const book = readyBook();
    book.grid.removeTab(book.grid.tab("Claims").id);
    book.grid.tab("Trials").write(1, 2, [[{ value: "What we ask" }]]);
    book.grid.tab("Trials").rename("Our trials");
    const entry = trial({ design: "Together", plantsB: ["Moss"] });
    expect(book.reply({ ask: "save trial", who: "Ana", trial: entry })).toEqual({
      written: 1,
      already: 0,
      differing: [],
    });
    expect(book.cell("Our trials", 2, "Plants B")).toBe("Moss");
    expect(book.cell("Our trials", 2, "What we ask")).toBe("Does rain water make more leaves?");
  });

  test("sent again with other words is told, and its claim too, and both are left as they are", () => {
    const book = readyBook();
    const [entry, of] = [trial(), claim()];
    book.reply({ ask: "save trial", who: "Ana", trial: entry, claim: of });
    const again = { trial: { ...entry, question: "Does it?" }, claim: { ...of, claim: "It does" } };
    const { written, already, differing } = book.reply({ ask: "save trial", who: "Ana", ...again });
    expect([written, already]).toEqual([0, 2]);
    expect(differing).toEqual([
      expect.stringMatching(/row 2 of “Trials”, with another Question\./),
      expect.stringMatching(/row 2 of “Claims”, with another Claim\./),
    ]);
  });

  test.each<readonly [Partial<TrialEntry>, string, string]>([
    [{ ends: "2026-03-09" }, "The trial ends on 2026-03-09. Give a day after 2026-03-09.", "ends-before"],
    [{ plantsB: ["Moss", "ivy "] }, "ivy  stands twice among the plants.", "plant-twice"],
    [{ plantsB: ["Moss"] }, "In pairs there are as many plants A as plants B; here are 2 and 1.", "not-paired"],
    [{ plantsB: ["Moss", "a;b"] }, "“a;b” has a semicolon in its name. Rename the plant without it.", "semicolon"],
  ])("%j is refused, and nothing is written", (given, sentence, code) => {
    const book = readyBook();
    expect(book.refusal({ ask: "save trial", who: "Ana", trial: trial(given), claim: claim() })).toEqual({
      code,
      sentence,
    });
    expect(book.values("Trials")).toHaveLength(1);
    expect(book.values("Claims")).toHaveLength(1);
  });
});

describe("a result", () => {
  const begun = () => {
    const book = readyBook();
    const entry = trial();
    book.reply({ ask: "save trial", who: "Ana", trial: entry });
    const result = {
      ask: "save result",
      trialId: entry.id,
      result: "Cannot tell yet.",
      difference: 0.5,
      low: -1,
      high: null,
      p: 0.4,
    } as const;
    return { book, result };
  };

  test("goes into the blank cells of its row, once", () => {
    const { book, result } = begun();
    expect(book.reply(result)).toEqual({ written: 1, already: 0, differing: [] });
    expect(book.reply(result)).toEqual({ written: 0, already: 1, differing: [] });
    expect(rows(book).trials[0]?.fields).toMatchObject({
      Result: "Cannot tell yet.",
      Difference: 0.5,
      From: -1,
      p: 0.4,
    });
    expect(book.values("Trials")).toHaveLength(2);
  });

  test("is never written over another one", () => {
    const { book, result } = begun();
    book.reply(result);
    const { code, sentence } = book.refusal({ ...result, p: 0.01 });
    expect(code).toBe("result-there");
    expect(sentence).toBe(
      "p of this trial already stands as 0.4 in row 2 of “Trials”, so nothing was written. If it is wrong, change it there.",
    );
  });

  test("of a trial that is not there, or there twice, is refused", () => {
    const { book, result } = begun();
    expect(book.refusal({ ...result, trialId: "no-such-trial" })).toEqual({
      code: "no-trial",
      sentence: expect.stringMatching(/“Trials” has no trial with the Id no-such-trial/),
    });
    book.grid.tab("Trials").write(4, 1, [[{ value: result.trialId }]]);
    expect(book.refusal(result)).toEqual({
      code: "trial-twice",
      sentence: expect.stringContaining(`Rows 2 and 4 of “Trials” have the same Id ${result.trialId}`),
    });
    expect(book.cell("Trials", 2, "Result")).toBeNull();
  });
});
