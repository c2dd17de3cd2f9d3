/** Claims and trials in the panel: what is sent, when it is refused, and what stands there afterwards. */

import { describe, expect, test } from "vitest";
import { readClaims, sortClaims } from "../../sidebar/claim-rows.ts";
import { drawOf, spreadBefore } from "../../sidebar/trial-draft.ts";
import { canKeep, readTrials, sayDraw, stateOf } from "../../sidebar/trial-rows.ts";
import type { FieldRow, Records } from "../../src/app/contract.ts";
import { drawRepeats } from "../../src/core/assignment.ts";
import { care } from "./care-rows.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

const CLAIM: FieldRow = {
  row: 2,
  fields: {
    Id: "claim-0001",
    Claim: "Rain water makes more leaves",
    "Heard from": "Bo",
    "Years at it": 6,
    "Their setup": "Balcony",
    Status: "Heard",
    "Heard on": "2026-01-05",
    "Look again": "2026-03-14",
  },
};
const records = (claims: FieldRow[] = [], trials: FieldRow[] = []): Records => ({
  purchases: [],
  meterLog: [],
  claims,
  trials,
  problems: [],
});
const WRITTEN = { written: 1, already: 0, differing: [] };

async function open(claims: FieldRow[] = [], trials: FieldRow[] = []) {
  const opened = await openTestPanel();
  opened.panel.recordsLoading.press();
  await opened.host.last().reply(records(claims, trials));
  return opened;
}

describe("a claim", () => {
  test("is sent with what was typed, heard today, and stands in the list", async () => {
    const { panel, host } = await open();
    panel.claims.sender.press();
    expect(said(panel.claims.sender)).toBe("blocked: Write down what was said, in one sentence.");
    panel.claims.draft.change((now) => ({ ...now, claim: " Rain helps ", years: "2,5", theirSetup: "Balcony" }));
    panel.claims.sender.press();
    const { request } = host.last();
    expect(request).toMatchObject({
      ask: "save claim",
      who: "Ama",
      claim: { claim: "Rain helps", yearsAtIt: 2.5, theirSetup: "Balcony", status: "heard", heardOn: "2026-03-14" },
    });
    expect(request).not.toHaveProperty("claim.corrects");
    await host.last().reply(WRITTEN);
    expect(said(panel.claims.sender)).toBe("done: The claim is saved.");
    expect(readClaims(panel.records.get()?.claims ?? [])).toMatchObject([{ claim: "Rain helps", yearsAtIt: 2.5 }]);
    expect(panel.claims.draft.get().claim).toBe("");
  });

  test("that is changed points at its old row, which is gone from the list", async () => {
    const { panel, host } = await open([CLAIM]);
    const [claim] = readClaims([CLAIM]);
    if (claim === undefined) throw new Error("no claim");
    panel.claims.change(claim);
    panel.claims.draft.change((now) => ({ ...now, status: "dropped", outcome: "Nothing came of it" }));
    panel.claims.sender.press();
    expect(host.last().request).toMatchObject({
      claim: { corrects: "claim-0001", status: "dropped", heardOn: "2026-01-05", yearsAtIt: 6 },
    });
    await host.last().reply(WRITTEN);
    expect(readClaims(panel.records.get()?.claims ?? [])).toMatchObject([
      { status: "dropped", outcome: "Nothing came of it", lookAgain: "2026-03-14" },
    ]);
  });

  test("keeps its id through a failure, and its draft through closing the panel", async () => {
    const { panel, host, storage } = await open();
    panel.claims.draft.change((now) => ({ ...now, claim: "Rain helps" }));
    panel.claims.sender.press();
    const first = host.last().request;
    await host.last().fail("Busy.");
    const again = await openTestPanel({}, storage, "other");
    again.panel.claims.sender.press();
    expect(again.host.last().request).toEqual(first);
  });

  test("edited while it is being saved becomes a change of the row that was saved", async () => {
    const { panel, host } = await open();
    panel.claims.draft.change((now) => ({ ...now, claim: "Rain helps" }));
    panel.claims.sender.press();
    const { request } = host.last();
    const saved = request.ask === "save claim" ? request.claim.id : "";
    panel.claims.draft.change((now) => ({ ...now, note: "in summer" }));
    await host.last().reply(WRITTEN);
    expect(panel.claims.draft.get()).toMatchObject({ claim: "Rain helps", note: "in summer", corrects: saved });
    expect(panel.claims.draft.get().id).not.toBe(saved);
  });

  test("due for another look comes first; a state nobody knows counts as heard", () => {
    const odd = { row: 3, fields: { Claim: "B", Status: "perhaps" } };
    const kept = { row: 4, fields: { Claim: "C", Status: "kept", "Look again": "2026-03-15" } };
    const sorted = sortClaims(readClaims([kept, odd, { row: 5, fields: { Status: "kept" } }, CLAIM]), "2026-03-14");
    expect(sorted.map(({ claim, status }) => [claim, status])).toEqual([
      ["Rain water makes more leaves", "heard"],
      ["B", "heard"],
      ["C", "kept"],
    ]);
  });
});

describe("a trial", () => {
  test("of a claim is drawn and sent once, with the claim being tried", async () => {
    const { panel, host } = await open([CLAIM]);
    const [claim] = readClaims([CLAIM]);
    if (claim === undefined) throw new Error("no claim");
    panel.trials.tryClaim(claim);
    const press = (change: object): string => {
      panel.trials.draft.change((now) => ({ ...now, ...change }));
      panel.trials.sender.press();
      return said(panel.trials.sender);
    };
    expect(press({})).toBe("blocked: Say what group A gets and what group B gets.");
    expect(press({ groupA: "rain", groupB: "tap" })).toBe("blocked: Choose at least two plants.");
    const plants = sheet().plants.map(({ plant }) => plant);
    expect(press({ plants, started: "2026-03-13" })).toBe(
      "blocked: A trial begins today or later: the groups are drawn before anything is counted.",
    );
    expect(press({ started: "", ends: "2026-03-14" })).toBe("blocked: Choose a last day that is later than the first.");
    expect(press({ ends: "", worth: "1,234" })).toMatch(/^blocked: The difference is "1,234"/);
    expect(press({ worth: "2" })).toBe("under way");
    const { request } = host.last();
    if (request.ask !== "save trial") throw new Error("another request");
    const { trial } = request;
    expect(trial).toMatchObject({
      question: "Rain water makes more leaves?",
      started: "2026-03-14",
      ends: "2026-06-12",
      design: "Pairs",
      worthSeeing: 2,
      draw: drawOf(trial.id),
    });
    expect([...trial.plantsA, ...trial.plantsB].sort()).toEqual([...plants].sort());
    expect(drawRepeats({ a: trial.plantsA, b: trial.plantsB }, "Pairs", trial.draw)).toBe(true);
    expect(request.claim).toMatchObject({ corrects: "claim-0001", status: "trying", trial: trial.id });

    await host.last().lose();
    panel.trials.sender.press();
    expect(host.last().request).toEqual(request);
    await host.last().reply({ written: 2, already: 0, differing: [] });
    expect(said(panel.trials.sender)).toBe(
      `done: The groups are drawn, by the number ${trial.draw}. They stand above.`,
    );
    const { trials } = readTrials(panel.records.get()?.trials ?? []);
    expect(trials).toMatchObject([{ id: trial.id, plantsA: trial.plantsA }]);
    expect(trials[0] && sayDraw(trials[0])).toBe(
      `Drawn within pairs by the number ${trial.draw}; the same number gives the same groups.`,
    );
    expect(readClaims(panel.records.get()?.claims ?? [])).toMatchObject([{ status: "trying", trial: trial.id }]);
  });

  const row = (fields: FieldRow["fields"]): FieldRow => ({
    row: 2,
    fields: {
      Id: "trial-0001",
      Question: "Does rain help?",
      Measure: "new leaves",
      Started: "2026-01-01",
      Ends: "2026-03-01",
      "Plants A": "A1; A2; A3; A4; A5; A6",
      "Plants B": "B1; B2; B3; B4; B5; B6",
      Design: "Pairs",
      ...fields,
    },
  });

  test("that is over is judged by the log, and its result goes beside it once", async () => {
    // By hand: A has one leaf more in each of six pairs; 2 of 64 ways are as far apart.
    const rows = [1, 2, 3, 4, 5, 6].flatMap((k) => [
      care("2026-02-20", `A${k}`, "New leaf"),
      care("2026-02-10", `B${k}`, "Top up"),
    ]);
    const { panel, host } = await open([], [row({})]);
    const [trial] = readTrials(panel.records.get()?.trials ?? []).trials;
    if (trial === undefined) throw new Error("no trial");
    const state = stateOf(trial, sheet({ care: { rows, from: "2025-01-01", all: true } }));
    if (typeof state === "string") throw new Error(state);
    expect(state.test).toMatchObject({ difference: 1, asExtreme: 2, splits: 64 });
    expect(canKeep(trial, state)).toBe(true);
    panel.trials.keep(trial, state);
    expect(host.last().request).toMatchObject({ ask: "save result", trialId: "trial-0001", difference: 1, p: 2 / 64 });
    await host.last().reply(WRITTEN);
    const [kept] = readTrials(panel.records.get()?.trials ?? []).trials;
    expect(kept?.result).toMatch(
      /^On average A 1, B 0\. A difference: group A had 1 more new leaf a plant than group B\./,
    );
    expect(kept && canKeep(kept, state)).toBe(false);
  });

  test("is not judged before its last day is over, nor from half a log, and what cannot be read is told", () => {
    const { trials, problems } = readTrials([
      row({}),
      { ...row({ Measure: "Greenness" }), row: 3 },
      { ...row({ Ends: "2026-01-01" }), row: 4 },
      { ...row({ "Plants B": "B1" }), row: 5 },
      { ...row({ "Plants A": " ; " }), row: 6 },
    ]);
    expect(problems).toEqual([
      "Row 3 of Trials has another measure than the panel knows: “Greenness”. Write one of New leaves, Days to first new leaf, Days to first new root, Score.",
      "Row 4 of Trials needs a first day and a later last day.",
      "Row 5 of Trials says Pairs, but has 6 plants A and 1 plants B.",
      "Row 6 of Trials needs plants on both sides.",
    ]);
    const [trial] = trials;
    if (trial === undefined) throw new Error("no trial");
    const running = stateOf(trial, sheet({ today: "2026-03-01" }));
    expect(running).toMatchObject({ verdict: "running", test: null });
    expect(typeof running !== "string" && canKeep(trial, running)).toBe(false);
    expect(stateOf(trial, sheet({ care: { rows: [], from: "2026-01-02", all: false } }))).toBe(
      "The panel holds the care log from 2 Jan 2026 on, and this trial began before. Its measures cannot be gathered here.",
    );
    expect(sayDraw(trial)).toMatch(/^No draw is on record\./);
    expect(sayDraw({ ...trial, draw: 1 })).toMatch(/^The number 1 on record gives other groups than these/);
  });

  test("takes the spread of its plants from a time as long before", () => {
    const plants = sheet().plants.slice(0, 6);
    const rows = plants.flatMap(({ plant }, k) =>
      Array.from({ length: 1 + (k % 3) }, (_, leaf) => care(`2026-02-${10 + leaf}`, plant, "New leaf")),
    );
    const loaded = sheet({ plants, care: { rows, from: "2025-01-01", all: true } });
    const draft = {
      id: "made-id-1",
      claim: null,
      question: "",
      measure: "New leaves",
      started: "2026-03-14",
      ends: "2026-06-12",
      groupA: "",
      groupB: "",
      design: "Together",
      place: "",
      plants: plants.map(({ plant }) => plant),
      worth: "",
      spread: "",
    } as const;
    // 1 2 3 1 2 3 leaves: mean 2, sum of squares 4, over 5.
    expect(spreadBefore(draft, loaded)).toBeCloseTo(Math.sqrt(4 / 5), 12);
    expect(spreadBefore({ ...draft, plants: draft.plants.slice(0, 2) }, loaded)).toBeNull();
    expect(spreadBefore(draft, { ...loaded, care: { ...loaded.care, all: false, from: "2026-02-01" } })).toBeNull();
  });
});
