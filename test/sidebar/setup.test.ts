/** "Set up": guessing columns, choosing a list, finding formulas; and the small parts beneath the panel. */

import { describe, expect, test } from "vitest";
import { tabStorage } from "../../sidebar/drafts.ts";
import { findFunctions, readFormulas } from "../../sidebar/formulas.ts";
import { besides, gauges } from "../../sidebar/gauge.ts";
import { agoWords, idMadeAt, timeOfId } from "../../sidebar/ids.ts";
import { columnsProblem, guessColumns } from "../../sidebar/own-list.ts";
import { showDay } from "../../sidebar/show.ts";
import { FORMULAS } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

describe("columns of one's own list", () => {
  test.each([
    [
      ["Name", "Room", "Species", "Pot size", "Bought"],
      { Plant: "Name", Place: "Room", Kind: "Species", "Pot mL": "Pot size", Since: "Bought", Medium: "", Note: "" },
    ],
    [
      ["PLANT ", "Plant name (old)", "Remarks", "", "Location"],
      { Plant: "PLANT", Place: "Location", Note: "Remarks", Kind: "", "Pot mL": "", Medium: "", Since: "" },
    ],
    [["x", "y"], { Plant: "", Kind: "", Place: "", "Pot mL": "", Medium: "", Since: "", Note: "" }],
  ])("%o are guessed", (headings, guess) => {
    expect(guessColumns(headings)).toEqual(guess);
  });

  test("must name the plants, and no column twice", () => {
    expect(columnsProblem({})).toBe("Choose the column that holds the plants’ names.");
    expect(columnsProblem({ Plant: "Name", Kind: "Name" })).toBe(
      "“Name” is chosen for Plant and for Kind. Choose it for one of them.",
    );
    expect(columnsProblem({ Plant: "Name", Kind: "" })).toBeNull();
  });

  test("are sent with their tab, and the sheet is read again", async () => {
    const { panel, host } = await openTestPanel();
    panel.setup.listSender.press();
    expect(said(panel.setup.listSender)).toBe("blocked: Choose a tab.");
    panel.setup.tabsSender.press();
    await host.last().reply({ tabs: [{ tab: "Mine", headings: ["Name", "Room"], rows: 3 }] });
    panel.setup.chooseTab("Mine");
    panel.setup.list.change((now) => ({ ...now, columns: { ...now.columns, Place: "" } }));
    panel.setup.listSender.press();
    expect(host.last().request).toMatchObject({
      ask: "use plant list",
      tab: "Mine",
      columns: { Plant: "Name", Place: "" },
    });
    await host.last().reply({ plantTab: "Mine", plants: 3 });
    expect(host.last().request).toEqual({ ask: "load" });
    expect(said(panel.setup.listSender)).toBe("done: Plants now come from “Mine”: 3 plants.");
  });
});

describe("one's name", () => {
  test("is saved trimmed; a blank one is asked for", async () => {
    const { panel, host } = await openTestPanel();
    panel.setup.name.set("  ");
    panel.setup.nameSender.press();
    expect(said(panel.setup.nameSender)).toBe("blocked: Type your name.");
    panel.setup.name.set(" Bo ");
    panel.setup.nameSender.press();
    expect(host.last().request).toEqual({ ask: "set name", who: "Bo" });
    await host.last().reply({ who: "Bo" });
    expect(panel.loaded.get()?.who).toBe("Bo");
  });
});

describe("formulas", () => {
  const found = (find: string): string[] => findFunctions(FORMULAS, find).map(({ name }) => name);
  test("are found by any words, those with the word in the name first", () => {
    expect(found("")).toEqual(["WATER_HARDNESS", "ROOT_REST"]);
    expect(found("days ROOT")).toEqual(["ROOT_REST"]);
    expect(found("calcium")).toEqual(["WATER_HARDNESS"]);
    expect(found("rocket")).toEqual([]);
  });
  test("are read from the page, and a page without them or with spoilt ones gives none", () => {
    expect(readFormulas(JSON.stringify(FORMULAS))).toEqual(FORMULAS);
    for (const spoilt of [undefined, null, "", "{", "{}", "null", '[1, {"name": "F"}, null]']) {
      expect(readFormulas(spoilt)).toEqual([]);
    }
  });
});

describe("levels", () => {
  const [n, p, na] = gauges({ N: 100, P: 10, Na: 0 }, { N: 50, P: 25, Na: 5 }, { N: 10, P: 40 });
  test("say the difference in words", () => {
    expect([n?.words, p?.words, na?.words]).toEqual(["50 % under", "150 % over", "5 too much"]);
    expect(gauges({ N: 100 }, { N: 100.9 }, {})[0]).toMatchObject({ words: "as wanted", far: false });
    expect(gauges({ Fe: 1 }, {}, {})[0]?.words).toBe("missing");
    expect(gauges({ N: 10 }, { N: 1234 }, {})[0]?.words).toBe("123 times");
    expect(gauges({ N: 100 }, { N: 104 }, {})[0]).toMatchObject({ words: "4 % over", far: false });
  });
  test("stay inside their drawing", () => {
    for (const one of [n, p, na]) {
      for (const share of [one?.waterShare, one?.reachedShare, one?.markShare]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
    }
    expect(n?.markShare).toBeCloseTo(2 / 3, 12);
  });
  test("leave elements without a target to a list of their own", () => {
    expect(besides({ N: 1 }, { N: 1, Cl: 22, Si: 0 })).toEqual([{ symbol: "Cl", mgL: 22 }]);
  });
});

describe("an id", () => {
  test("is a UUID of version 7 with its time, as in RFC 9562, appendix A.6", () => {
    // The RFC's example: Tuesday, February 22, 2022 2:22:22.00 PM GMT-05:00 is 0x017F22E279B0.
    const example = Date.UTC(2022, 1, 22, 19, 22, 22);
    expect(timeOfId("017f22e2-79b0-7cc3-98c4-dc0c0c07398f")).toBe(example);
    const id = idMadeAt(example);
    expect(id).toMatch(/^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(timeOfId(id)).toBe(example);
    expect(idMadeAt(example)).not.toBe(id);
  });

  test("says how long ago a row was begun, and nothing where it cannot", () => {
    const now = Date.UTC(2026, 2, 14, 18, 0);
    const ago = (minutes: number) => agoWords(idMadeAt(now - minutes * 60_000), now);
    expect([0, 1, 2, 49, 50, 80, 100, 600].map(ago)).toEqual([
      ...["just now", "just now", "2 minutes ago", "49 minutes ago"],
      ...["an hour ago", "an hour ago", "2 hours ago", "10 hours ago"],
    ]);
    expect([21 * 60, -5].map(ago)).toEqual([null, null]);
    expect(agoWords("care-00001", now)).toBeNull();
    expect(agoWords(crypto.randomUUID(), now)).toBeNull();
  });
});

test("a day is shown with its month in letters; a text that is no day as it is", () => {
  expect(showDay("2026-03-01")).toBe("1 Mar 2026");
  expect(showDay("2026-13-01")).toBe("2026-13-01");
});

test("a sandbox that refuses storage gives none", () => {
  const kept = Object.getOwnPropertyDescriptor(globalThis, "sessionStorage");
  Object.defineProperty(globalThis, "sessionStorage", {
    configurable: true,
    get: () => {
      throw new Error("SecurityError");
    },
  });
  try {
    expect(tabStorage()).toBeNull();
  } finally {
    if (kept) Object.defineProperty(globalThis, "sessionStorage", kept);
    else Reflect.deleteProperty(globalThis, "sessionStorage");
  }
});
