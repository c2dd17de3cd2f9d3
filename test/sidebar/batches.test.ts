/** The life of a batch: planned, mixed, repeated at another volume, corrected, taken back, and its card. */

import { describe, expect, test } from "vitest";
import { acidOfText } from "../../sidebar/acid-draft.ts";
import { work } from "../../sidebar/batch.ts";
import { cardOfRow, cardText } from "../../sidebar/batch-card.ts";
import { readBatch } from "../../sidebar/batch-draft.ts";
import { mixedRequest } from "../../sidebar/batches-desk.ts";
import { keepWeighed } from "../../sidebar/old-batch.ts";
import { acidForVolume, changesSince, orderAcidOf, pastOf } from "../../sidebar/past-batch.ts";
import { waitingBatches } from "../../sidebar/readings.ts";
import type { BatchRow, Loaded, RequestFor } from "../../src/app/contract.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

/** 1 g/L of potassium nitrate and 0.5 g/L of magnesium sulfate in tap water, by hand from their percents. */
const ROW: BatchRow = {
  id: "batch-0000-0009",
  day: "2026-03-02",
  who: "Ama",
  litres: 10,
  water: "Tap",
  target: "Rooting, weak",
  doses: "Potassium nitrate 1 g/L (10 g); Magnesium sulfate heptahydrate 0.5 g/L (5 g)",
  reached: { N: 138.54 + 2.1, K: 386.72, Ca: 62, Mg: 49.305 + 9, S: 65.04 + 10.348 },
  predictedEcMsCm: 1.8,
  acid: "phosphoric acid 75 %: 2 mL, to pH 5.8",
  measuredEcMsCm: 1.85,
  measuredPH: 5.9,
  verdict: "As expected.",
  note: "By the window",
  state: "mixed",
  corrects: "",
};
const TOOLS = { "Scale step g": "0.1", "Syringe step mL": "0.1" };
const open = (rows: readonly BatchRow[], change: Partial<Loaded> = {}) =>
  openTestPanel({ batches: [...rows], settings: TOOLS, ...change });

function past(row: BatchRow = ROW) {
  const read = pastOf(row);
  if (typeof read === "string") throw new Error(read);
  return read;
}

/** The last request, which should log a batch. */
function sentBatch(host: { last(): { request: unknown } }): RequestFor<"log batch">["batch"] {
  const request = host.last().request as RequestFor<"log batch">;
  expect(request.ask).toBe("log batch");
  return request.batch;
}

const logged = { written: 1, already: 0, differing: [] };

describe("planned, then mixed", () => {
  test("a plan is logged as one, and keeps the readings card free", async () => {
    const { panel, host } = await open([]);
    panel.batch.draft.change((now) => ({
      ...now,
      water: "tap",
      target: "rooting, weak",
      feeds: ["Potassium nitrate"],
      litres: "5",
      planned: true,
    }));
    panel.batch.sender.press();
    expect(sentBatch(host).state).toBe("planned");
    await host.last().reply(logged);
    expect(said(panel.batch.sender)).toBe("done: Planned 5 L of “Rooting, weak”. Log it as mixed once it is.");
    expect(panel.loaded.get()?.batches[0]).toMatchObject({ state: "planned", litres: 5 });
    expect(panel.readings.draft.get().batchId).toBe("");
    expect(waitingBatches(panel.loaded.get()?.batches ?? [])).toEqual([]);
    panel.batch.another();
    expect(panel.batch.draft.get()).toMatchObject({ planned: false, logged: false });
  });

  test("mixed is a new row of today by whoever presses, with the numbers as planned, and the plan no longer stands", async () => {
    const plan: BatchRow = { ...ROW, state: "planned", who: "Bo", measuredEcMsCm: null, measuredPH: null };
    const { panel, host } = await open([plan]);
    panel.batches.mixed(plan);
    panel.batches.mixed(plan);
    const batch = sentBatch(host);
    expect(batch).toMatchObject({ corrects: ROW.id, day: "2026-03-14", litres: 10, acid: ROW.acid, note: ROW.note });
    expect(batch.state).toBeUndefined();
    expect(batch.reached).toEqual(ROW.reached);
    expect(batch.doses).toHaveLength(2);
    await host.last().reply(logged);
    const rows = panel.loaded.get()?.batches ?? [];
    expect(rows.map(({ id }) => id)).toEqual([batch.id]);
    expect(rows[0]).toMatchObject({ who: "Ama", state: "mixed" });
    expect(panel.readings.draft.get().batchId).toBe(batch.id);
  });

  test("two panels that press log the same row", () => {
    const as = (who: string) => mixedRequest({ ...ROW, state: "planned" }, { who, today: "2026-03-14" });
    const [a, b] = [as("Ama"), as("Bo")];
    if (typeof a === "string" || typeof b === "string") throw new Error("Both should be requests.");
    expect(a.batch.id).toBe(b.batch.id);
    expect(a.batch.id).toMatch(/^[a-z0-9-]{8,64}$/);
    expect(mixedRequest({ ...ROW, litres: null }, { who: "Ama", today: "2026-03-14" })).toContain("litres");
    expect(mixedRequest({ ...ROW, doses: "a bit" }, { who: "Ama", today: "2026-03-14" })).toContain("a bit");
    expect(mixedRequest(ROW, { who: "", today: "2026-03-14" })).toContain("Type your name first");
  });
});

describe("repeated at another volume", () => {
  test("doses for a litre stay, measured out with today's tools, and the acid is taken up again", async () => {
    const { panel, host } = await open([ROW]);
    panel.batch.repeat(past());
    expect(panel.batch.draft.get()).toMatchObject({ mode: "repeat", litres: "", corrects: "" });
    panel.batch.draft.change((now) => ({ ...now, litres: "7,5" }));
    const worked = work(panel.batch.draft.get(), panel.batch.shelf.get());
    // 7.5 g and 3.75 g: the second is between two steps of 0.1 g.
    expect(worked.lines.map(({ perBatch }) => perBatch)).toEqual([7.5, expect.toBeOneOf([3.7, 3.8])]);
    expect(worked.asLogged).toBeNull();
    expect(worked.reached?.K).toBeCloseTo(386.72, 1);
    expect(panel.acid.get()).toMatchObject({ acid: "phosphoric acid", strength: "75", targetPH: "5.8" });
    panel.batch.sender.press();
    const batch = sentBatch(host);
    expect(batch).toMatchObject({ litres: 7.5, water: "Tap", target: "Rooting, weak" });
    expect(batch.corrects).toBeUndefined();
    expect(batch.measured).toBeUndefined();
  });

  test("where a label changed since, the numbers are those of the log and the difference is said", async () => {
    const feeds = sheet().feeds.map((row) =>
      row.fields.Feed === "Potassium nitrate" ? { ...row, fields: { ...row.fields, K: 30 } } : row,
    );
    const { panel, host } = await open([ROW], { feeds });
    panel.batch.repeat(past());
    panel.batch.draft.change((now) => ({ ...now, litres: "5" }));
    const worked = work(panel.batch.draft.get(), panel.batch.shelf.get());
    expect(worked.notices).toContain(
      "With labels and water as they stand now, potassium would come to 300 mg/L. The log says 387.",
    );
    expect(worked.reached?.K).toBeCloseTo(386.72, 6);
    panel.batch.sender.press();
    expect(sentBatch(host)).toMatchObject({ predictedEcMsCm: 1.8, acid: "phosphoric acid 75 %: 1 mL, to pH 5.8" });
    expect(sentBatch(host).reached.K).toBeCloseTo(386.72, 6);
  });

  test("a feed that is gone keeps its dose, and is told", async () => {
    const feeds = sheet().feeds.filter(({ fields }) => fields.Feed !== "Magnesium sulfate heptahydrate");
    const { panel } = await open([ROW], { feeds });
    panel.batch.repeat(past());
    panel.batch.draft.change((now) => ({ ...now, litres: "20" }));
    const worked = work(panel.batch.draft.get(), panel.batch.shelf.get());
    expect(worked.lines[1]).toMatchObject({ feed: "Magnesium sulfate heptahydrate", perLitre: 0.5, perBatch: 10 });
    expect(worked.notices[0]).toBe(
      "Magnesium sulfate heptahydrate is no longer on the shelf. Its dose stays as it was.",
    );
  });

  test("the water that is gone is told; nothing is told where all is as it was", async () => {
    const { panel } = await open([ROW]);
    const shelf = panel.batch.shelf.get();
    expect(changesSince(past({ ...ROW, acid: "" }), shelf).changes).toEqual([]);
    expect(changesSince(past({ ...ROW, water: "Old well" }), shelf).changes[0]).toContain("Old well");
  });

  test("pure water is no row of the Waters tab, and still is there", async () => {
    const { panel } = await open([ROW]);
    const doses = "Potassium nitrate 1 g/L (10 g)";
    const pure = past({ ...ROW, water: "Pure water", acid: "", doses, reached: { N: 138.54, K: 386.72 } });
    expect(changesSince(pure, panel.batch.shelf.get()).changes).toEqual([]);
    panel.batch.correct(pure, ROW);
    expect(panel.batch.draft.get()).toMatchObject({ mode: "doses", water: "(pure water)" });
  });

  test("it is kept while the panel is closed, and what is spoilt is dropped", async () => {
    const { panel } = await open([ROW]);
    panel.batch.repeat(past());
    const kept = JSON.parse(JSON.stringify(panel.batch.draft.get()));
    expect(readBatch(kept)?.past).toMatchObject({ id: ROW.id, litres: 10 });
    expect(readBatch({ ...kept, past: { litres: 0 } })).toMatchObject({ mode: "target", past: null, corrects: "" });
  });
});

describe("corrected", () => {
  test("a wrong dose: the fields hold what was logged, and the new row replaces the old one with its readings", async () => {
    const { panel, host } = await open([ROW]);
    panel.batch.correct(past(), ROW);
    expect(panel.batch.draft.get()).toMatchObject({
      mode: "doses",
      corrects: ROW.id,
      litres: "10",
      day: "2026-03-02",
      note: ROW.note,
      doses: { "Potassium nitrate": "1", "Magnesium sulfate heptahydrate": "0.5" },
    });
    panel.batch.draft.change((now) => ({ ...now, doses: { ...now.doses, "Potassium nitrate": "0.9" } }));
    panel.batch.sender.press();
    const batch = sentBatch(host);
    expect(batch).toMatchObject({ corrects: ROW.id, day: "2026-03-02", measured: { ecMsCm: 1.85, pH: 5.9 } });
    expect(batch.id).not.toBe(ROW.id);
    await host.last().reply(logged);
    const rows = panel.loaded.get()?.batches ?? [];
    expect(rows.map(({ id }) => id)).toEqual([batch.id]);
    expect(rows[0]).toMatchObject({ measuredEcMsCm: 1.85, measuredPH: 5.9 });
    expect(said(panel.batch.sender)).toContain("the old row no longer counts");
  });

  test("wrong litres with the right amounts weighed: the doses for a litre follow", async () => {
    const { panel } = await open([ROW]);
    panel.batch.correct(past(), ROW);
    // 10 g in 8 L is 1.25 g/L.
    expect(keepWeighed(panel.batch.draft.get(), 8).doses).toEqual({
      "Potassium nitrate": "1.25",
      "Magnesium sulfate heptahydrate": "0.625",
    });
  });

  test("a plan stays a plan unless that is changed", async () => {
    const plan: BatchRow = { ...ROW, state: "planned", measuredEcMsCm: null, measuredPH: null };
    const { panel, host } = await open([plan]);
    panel.batch.correct(past(plan), plan);
    panel.batch.sender.press();
    expect(sentBatch(host)).toMatchObject({ state: "planned", corrects: ROW.id });
    expect(sentBatch(host).measured).toBeUndefined();
  });

  test("left alone, the next batch begins anew", async () => {
    const { panel } = await open([ROW]);
    panel.batch.correct(past(), ROW);
    panel.batch.another();
    expect(panel.batch.draft.get()).toMatchObject({ corrects: "", past: null, note: "" });
  });
});

describe("taken back", () => {
  test("the row is gone from the list; one that corrected another brings that back with the sheet", async () => {
    const { panel, host } = await open([{ ...ROW, corrects: "batch-0000-0008" }]);
    panel.batches.takeBack(ROW.id);
    expect(host.last().request).toMatchObject({ ask: "take back", log: "Batch log", takes: ROW.id });
    await host.last().reply({ written: 1, already: 0 });
    expect(host.last().request).toEqual({ ask: "load" });
  });
});

describe("the acid of a logged batch", () => {
  test.each([
    ["phosphoric acid 75 %: 2 mL, to pH 5.8", 0.5, "phosphoric acid 75 %: 1 mL, to pH 5.8"],
    [
      "nitric acid 65 %, 5 mL in 100 mL: 19 mL of the thinned acid, to pH 5.8",
      2,
      "nitric acid 65 %, 5 mL in 100 mL: 38 mL of the thinned acid, to pH 5.8",
    ],
    ["citric acid monohydrate 11.3 g", 2, "citric acid monohydrate 22.6 g"],
    ["a splash of vinegar", 2, "a splash of vinegar"],
  ])("%s, times %d", (text, ratio, other) => expect(acidForVolume(text, ratio)).toBe(other));

  test("is taken up in the form and in the steps where it can be read", () => {
    expect(acidOfText("Nitric acid 65 %, 5 mL in 100 mL: 19 mL of the thinned acid, to pH 5.8")).toMatchObject({
      acid: "nitric acid",
      strength: "65",
      targetPH: "5.8",
    });
    expect(acidOfText("a splash of vinegar")).toBeNull();
    expect(orderAcidOf("phosphoric acid 75 %: 2 mL, to pH 5.8")).toMatchObject({
      kind: "acid",
      first: "1.6 mL of phosphoric acid 75 %",
      rest: "0.4 mL",
    });
    expect(orderAcidOf("a splash of vinegar")).toBeNull();
  });
});

describe("the card", () => {
  test("holds doses, steps, cautions, date, who, EC and pH, as the row has them", async () => {
    const { panel } = await open([ROW]);
    const card = cardOfRow(ROW, panel.batch.shelf.get());
    if (typeof card === "string") throw new Error(card);
    expect(card).toMatchObject({
      title: "10 L of “Rooting, weak”",
      state: "Mixed",
      day: "2 Mar 2026",
      who: "Ama",
      ec: "1.80 mS/cm at 25 °C, measured 1.85",
      pH: "5.8, measured 5.9",
    });
    expect(card.doses).toEqual([
      { feed: "Potassium nitrate", amount: "10 g", how: "" },
      { feed: "Magnesium sulfate heptahydrate", amount: "5 g", how: "" },
    ]);
    const text = cardText(card);
    expect(text).toContain("Stir in 1.6 mL of phosphoric acid 75 %");
    expect(text).toContain("Acid into water, never water into acid.");
    expect(text).toContain("from children and pets");
    expect(text).toContain("Magnesium sulfate heptahydrate: 5 g");
  });

  test("there is none of a row that cannot be read, and that is said", async () => {
    const { panel } = await open([ROW]);
    expect(cardOfRow({ ...ROW, doses: "" }, panel.batch.shelf.get())).toBe("It has no doses in the log.");
  });
});
