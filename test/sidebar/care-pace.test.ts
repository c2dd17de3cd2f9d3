/** Care at the kitchen pace: amounts remembered, one by one, doubles, reasons, taking back, moves from soil. */

import { describe, expect, test } from "vitest";
import { eventsToChoose, freshCare } from "../../sidebar/care.ts";
import { amountsFor } from "../../sidebar/care-amounts.ts";
import { doneThatDay, doublesWords } from "../../sidebar/doubles.ts";
import { idMadeAt } from "../../sidebar/ids.ts";
import { deedWords, latestDeeds, mayTakeBack } from "../../sidebar/latest.ts";
import { lastRound, roundOf } from "../../sidebar/round.ts";
import type { CareRow, Loaded } from "../../src/app/contract.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

let ids = 0;
const row = (plant: string, day: string, change: Partial<CareRow> = {}): CareRow => {
  ids += 1;
  return {
    id: `care-row-${String(ids).padStart(4, "0")}`,
    day,
    plant,
    event: "Top up",
    amountMl: null,
    solution: "",
    ecMsCm: null,
    pH: null,
    who: "Ama",
    reason: "",
    note: "",
    ...change,
  };
};
/** Newest first, as the sheet sends them. */
const care = (...rows: CareRow[]): Loaded["care"] => ({ rows, from: rows[rows.length - 1]?.day ?? null, all: true });

const LOG = care(
  row("Fern 1", "2026-03-12", { amountMl: 250 }),
  row("hoya 3", "2026-03-12", { amountMl: 180, who: "Bo" }),
  row("Fern 1", "2026-03-10", { event: "Solution change", amountMl: 400 }),
  row("Fern 1", "2026-03-02", { amountMl: 90 }),
  row("Arum 2", "2026-02-20", { event: "Repot", amountMl: 900 }),
  row("Peperomia 4", "2026-02-01"),
);

describe("amounts", () => {
  const loaded = sheet({ care: LOG });
  const plants = loaded.plants.slice(0, 4);
  const amounts = (change: object) => [...amountsFor({ ...freshCare(), ...change }, plants, loaded).values()];

  test("are those of the last time, by plant and event", () => {
    expect(amounts({})).toEqual([250, null, 180, null]);
    expect(amounts({ event: "solution change" })).toEqual([400, null, null, null]);
  });

  test("give way to what is typed for all, and that to what is typed for one, also to nothing", () => {
    expect(amounts({ amountMl: "100" })).toEqual([100, 100, 100, 100]);
    expect(amounts({ amountMl: "100", amounts: { "Arum 2": "1,5", "Hoya 3": "" } })).toEqual([100, 1.5, null, 100]);
  });

  test("are none for a disturbance", () => {
    expect(amounts({ event: "Repot" })).toEqual([null, null, null, null]);
  });

  test("of one plant that cannot be read are told by its name", async () => {
    const { panel } = await openTestPanel({ care: LOG });
    panel.care.choose(["Fern 1"], true);
    panel.care.draft.change((now) => ({ ...now, amounts: { "Fern 1": "a mug" } }));
    panel.care.sender.press();
    expect(said(panel.care.sender)).toBe('blocked: Amount for Fern 1 is "a mug". Give a plain number in mL, like 1.2.');
  });
});

describe("one by one", () => {
  test("goes down the list of a place in its order, passes over, goes back and comes to an end", async () => {
    const { panel, host } = await openTestPanel({ care: LOG });
    const now = (): string => {
      const { at, plants, plant } = roundOf(panel.care.draft.get(), sheet().plants);
      return `${at + 1}/${plants.length} ${plant?.plant ?? "over"}`;
    };
    panel.care.draft.change((draft) => ({ ...draft, place: "Stairwell", oneByOne: "yes" }));
    expect(now()).toBe("1/4 Arum 2");
    panel.care.back();
    expect(now()).toBe("1/4 Arum 2");
    panel.care.step(true);
    panel.care.step(false);
    expect(now()).toBe("3/4 Peperomia 8");
    panel.care.back();
    expect(now()).toBe("2/4 Fern 5");
    panel.care.step(false);
    panel.care.step(true);
    panel.care.step(true);
    expect(now()).toBe("5/4 over");
    panel.care.step(true);
    panel.care.back();
    panel.care.step(false);
    expect(Object.keys(panel.care.draft.get().chosen)).toEqual(["Arum 2", "Peperomia 8"]);
    panel.care.sender.press();
    expect(host.last().request).toMatchObject({ entries: [{ plant: "Arum 2" }, { plant: "Peperomia 8" }] });
  });

  test("offers those of the last round that are shown, when they were two or more", () => {
    const { plants, today } = sheet();
    const offered = (shown = plants) => lastRound(freshCare(), shown, { care: LOG, today });
    expect(offered()).toEqual({ day: "2026-03-12", plants: ["Fern 1", "Hoya 3"] });
    expect(offered(plants.slice(0, 1))).toBeNull();
    expect(lastRound({ ...freshCare(), event: "Note" }, plants, { care: LOG, today })).toBeNull();
  });
});

describe("what somebody else did", () => {
  const doubles = [
    { plant: "Fern 1", event: "Top up", day: "2026-03-14", who: "Bo", id: "care-00001" },
    { plant: "Hoya 3", event: "Top up", day: "2026-03-14", who: "Bo", id: "care-00001" },
  ];

  test("is said in a sentence each, with the first few plants by name", () => {
    expect(doublesWords(doubles, { today: "2026-03-14", nowMs: 0 })).toBe(
      "Bo logged Top up for Fern 1 and Hoya 3 today already.",
    );
    const many = ["P0", "P1", "P2", "P3", "P4", "P5"].map((plant) => ({
      plant,
      event: "Top up",
      day: "2026-03-14",
      who: "",
      id: "care-00002",
    }));
    expect(doublesWords(many, { today: "2026-03-15", nowMs: 0 })).toBe(
      "Somebody logged Top up for P0, P1, P2, P3 and 2 more plants on 14 Mar 2026 already.",
    );
  });

  test("is said with how long ago, where every row's id tells", () => {
    const nowMs = Date.UTC(2026, 2, 14, 18, 0);
    const at = (minutes: number, double: (typeof doubles)[number]) => ({
      ...double,
      id: idMadeAt(nowMs - minutes * 60_000),
    });
    const [fern, hoya] = doubles as [(typeof doubles)[number], (typeof doubles)[number]];
    const said = (...rows: typeof doubles) => doublesWords(rows, { today: "2026-03-14", nowMs });
    expect(said(at(62, fern), at(60, hoya))).toBe("Bo logged Top up for Fern 1 and Hoya 3 an hour ago.");
    expect(said(at(62, fern), hoya)).toBe("Bo logged Top up for Fern 1 and Hoya 3 today already.");
    expect(said(at(62, { ...fern, day: "2026-03-13" }))).toBe("Bo logged Top up for Fern 1 on 13 Mar 2026 already.");
  });

  test("is seen in the list before", () => {
    expect([...doneThatDay({ care: LOG }, "top up", "2026-03-12")]).toEqual([
      ["fern 1", "Ama"],
      ["hoya 3", "Bo"],
    ]);
  });

  test("keeps the choice and asks; leaving them out logs the others, all the same logs all", async () => {
    const { panel, host } = await openTestPanel();
    panel.care.choose(["Fern 1", "Arum 2", "Hoya 3"], true);
    panel.care.sender.press();
    await host.last().reply({ written: 0, already: 0, differing: [], doubles });
    expect(said(panel.care.sender)).toBe(
      "blocked: Bo logged Top up for Fern 1 and Hoya 3 today already. Nothing was written yet.",
    );
    expect(Object.keys(panel.care.draft.get().chosen)).toHaveLength(3);
    expect(panel.loaded.get()?.care.rows).toHaveLength(sheet().care.rows.length);
    panel.care.leaveDoublesOut();
    expect(host.last().request).toMatchObject({ entries: [{ plant: "Arum 2" }] });
    expect(host.last().request).not.toHaveProperty("again");
    await host.last().reply({ written: 1, already: 0, differing: [] });
    expect(panel.care.doubles.get()).toEqual([]);

    panel.care.choose(["Fern 1", "Hoya 3"], true);
    panel.care.sender.press();
    const first = host.last().request;
    await host.last().reply({ written: 0, already: 0, differing: [], doubles });
    panel.care.logAllTheSame();
    expect(host.last().request).toEqual({ ...first, again: true });
    await host.last().lose();
    panel.care.sender.press();
    expect(host.last().request).toEqual({ ...first, again: true });
    await host.last().reply({ written: 0, already: 2, differing: [] });
    expect(said(panel.care.sender)).toBe("done: Logged Top up for 2 plants on 14 Mar 2026.");
  });

  test("is forgotten when nothing is left to log, and when something else is chosen", async () => {
    const { panel, host } = await openTestPanel();
    panel.care.choose(["Fern 1"], true);
    panel.care.sender.press();
    await host.last().reply({ written: 0, already: 0, differing: [], doubles: doubles.slice(0, 1) });
    const asked = host.calls.length;
    panel.care.leaveDoublesOut();
    expect([host.calls.length, said(panel.care.sender)]).toEqual([asked, "idle"]);
  });
});

describe("a disturbance before the rest is over", () => {
  const early = { care: LOG, settings: { "rest days": "60" } };

  test("waits for a reason, one of the list or another, and sends it", async () => {
    const { panel, host } = await openTestPanel(early);
    panel.care.choose(["Arum 2", "Fern 1"], true);
    panel.care.draft.change((now) => ({ ...now, event: "Root trim" }));
    const asked = host.calls.length;
    panel.care.sender.press();
    // 20 February to 14 March 2026: 8 + 14 days.
    expect(said(panel.care.sender)).toMatch(
      /^blocked: Arum 2 has been at rest for 22 days since “Repot”; Settings asks/,
    );
    panel.care.draft.change((now) => ({ ...now, why: "other", reason: "  " }));
    panel.care.sender.press();
    expect(said(panel.care.sender)).toBe("blocked: Type the reason, or choose one of the list.");
    expect(host.calls.length).toBe(asked);
    panel.care.draft.change((now) => ({ ...now, why: "Rot" }));
    panel.care.sender.press();
    expect(host.last().request).toMatchObject({ entries: [{ reason: "Rot" }, { reason: "Rot" }] });
  });

  test("by another day counts from what was before that day", async () => {
    const { panel, host } = await openTestPanel(early);
    panel.care.choose(["Arum 2"], true);
    panel.care.draft.change((now) => ({ ...now, event: "Root trim", day: "2026-02-19" }));
    const asked = host.calls.length;
    panel.care.sender.press();
    expect(host.calls.length).toBe(asked + 1);
  });

  test("is known also where the log that was loaded does not reach back", async () => {
    const { panel } = await openTestPanel({ ...early, care: { ...care(), all: false } });
    panel.care.choose(["Hoya 3"], true);
    panel.care.draft.change((now) => ({ ...now, event: "Root trim" }));
    panel.care.sender.press();
    expect(said(panel.care.sender)).toMatch(/^blocked: Hoya 3 has been at rest for 34 days/);
  });

  test("leaves its reason behind when the event is another one", async () => {
    const { panel, host } = await openTestPanel(early);
    panel.care.choose(["Arum 2"], true);
    panel.care.draft.change((now) => ({ ...now, event: "Top up", why: "Rot" }));
    panel.care.sender.press();
    expect(host.last().request).toMatchObject({ entries: [{ reason: "" }] });
  });
});

describe("the latest entries", () => {
  test("stand together by press, newest first, and only so many", () => {
    const deeds = latestDeeds(LOG.rows, 4);
    expect(deeds.map(({ rows }) => deedWords(rows))).toEqual([
      "Top up for Fern 1, 250 mL",
      "Top up for hoya 3, 180 mL",
      "Solution change for Fern 1, 400 mL",
      "Top up for Fern 1, 90 mL",
    ]);
    expect(deedWords([row("A", "2026-03-01"), row("B", "2026-03-01")])).toBe("Top up for 2 plants");
    expect(deedWords([])).toBe("");
  });

  test("can be taken back by who logged them, where they have an Id", () => {
    const own = row("Fern 1", "2026-03-01", { who: " ama" });
    expect(mayTakeBack(own, "Ama")).toBe(true);
    expect(
      [
        { ...own, who: "Bo" },
        { ...own, who: "" },
        { ...own, id: "" },
      ].map((one) => mayTakeBack(one, "Ama")),
    ).toEqual([false, false, false]);
    expect(mayTakeBack({ ...own, who: "" }, "")).toBe(false);
  });

  test("are taken back in one request, with the same ids when it is tried again, and the sheet is read anew", async () => {
    const { panel, host } = await openTestPanel({ care: LOG });
    const rows = LOG.rows.slice(0, 2);
    panel.latest.takeBack(rows);
    const { request } = host.last();
    expect(request).toMatchObject({
      ask: "take back",
      who: "Ama",
      log: "Care log",
      takes: rows[0]?.id,
      more: [{ takes: rows[1]?.id }],
    });
    await host.last().lose();
    panel.latest.sender.press();
    expect(host.last().request).toEqual(request);
    await host.last().reply({ written: 2, already: 0 });
    expect(said(panel.latest.sender)).toBe(
      "done: Taken back: Top up for 2 plants. The row stays in the log, with a new one that says so.",
    );
    expect(host.last().request).toEqual({ ask: "load" });
  });

  test("are corrected by a row that names them, all they said kept unless it is changed", async () => {
    const { panel, host } = await openTestPanel({ care: LOG });
    const old = row("Fern 1", "2026-03-05", { amountMl: 80, solution: "Tap", ecMsCm: 1.2, pH: 6, note: "n" });
    panel.care.choose(["Arum 2"], true);
    expect(panel.care.correct(old)).toMatch(/^Plants are chosen above\./);
    panel.care.choose(["Arum 2"], false);
    expect(panel.care.correct(old)).toBeNull();
    panel.care.draft.change((now) => ({ ...now, amounts: { "Fern 1": "180" } }));
    panel.care.sender.press();
    const { id: _, who: __, ...said } = old;
    expect(host.last().request).toMatchObject({ entries: [{ ...said, amountMl: 180, corrects: old.id }] });
    await host.last().reply({ written: 1, already: 0, differing: [] });
    expect(host.last().request).toEqual({ ask: "load" });
    expect(panel.care.draft.get().corrects).toBe("");
  });

  test("cannot be corrected for two plants at once, and can be left as they were", async () => {
    const { panel } = await openTestPanel({ care: LOG });
    panel.care.correct(LOG.rows[0] as CareRow);
    panel.care.choose(["Arum 2"], true);
    panel.care.sender.press();
    expect(said(panel.care.sender)).toBe("blocked: A correction is for one plant. Choose only that one.");
    panel.care.stopCorrecting();
    expect(panel.care.draft.get()).toEqual(freshCare());
  });
});

test("taking back is not among the things that can have happened", () => {
  const events = [...sheet().events, { event: "Taken back", disturbsRoots: false }];
  expect(eventsToChoose({ events })).toEqual(sheet().events);
});

describe("a move from soil", () => {
  test("writes a step as a row of the log, asks about a double, and is written all the same when pressed again", async () => {
    const { panel, host } = await openTestPanel();
    panel.move.solution.set("Rooting, weak");
    panel.move.did("Fern 1", "weak");
    const first = host.last().request;
    expect(first).toMatchObject({
      ask: "log care",
      entries: [
        {
          plant: "Fern 1",
          day: "2026-03-14",
          event: "Solution change",
          reason: "Weak solution after move from soil",
          solution: "Rooting, weak",
        },
      ],
    });
    const doubles = [{ plant: "Fern 1", event: "Solution change", day: "2026-03-14", who: "Bo", id: "care-00001" }];
    await host.last().reply({ written: 0, already: 0, differing: [], doubles });
    expect(said(panel.move.sender)).toBe(
      "blocked: Bo logged Solution change for Fern 1 today already. Press the step again to log it all the same.",
    );
    panel.move.did("Fern 1", "weak");
    expect(host.last().request).toEqual({ ...first, again: true });
    await host.last().reply({ written: 1, already: 0, differing: [] });
    expect(said(panel.move.sender)).toBe("done: Logged for Fern 1: weak solution, 14 Mar 2026.");
    expect(panel.loaded.get()?.care.rows[0]).toMatchObject({ event: "Solution change", who: "Ama" });
    panel.move.did("Fern 1", "look");
    expect(host.last().request).toMatchObject({ entries: [{ event: "Note", solution: "" }] });
  });

  test("waits for a name and a day", async () => {
    const { panel, host } = await openTestPanel({ who: "" });
    const asked = host.calls.length;
    panel.move.did("Fern 1", "weak");
    expect(said(panel.move.sender)).toMatch(/^blocked: Type your name first/);
    panel.setup.name.set("Bo");
    panel.move.day.set("none");
    panel.move.did("Fern 1", "weak");
    expect(said(panel.move.sender)).toBe("blocked: Choose the date.");
    expect(host.calls.length).toBe(asked);
  });
});
