/** A claim becomes a trial and gets a result, in a real browser beside the sheet; recovery is drawn and said. */

import { describe, expect, it } from "vitest";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";
import { bench } from "./workbench.ts";

const sheet = standingSheet();
const { type, panelFrame } = sheet;

/** A whole story in one test, on a machine that is busy. */
const STORY_MS = 60_000;

type Row = Readonly<Record<string, unknown>> & { readonly at: number };

/** Filled rows of a tab by heading, with their place in the sheet. */
async function rows(tab: string): Promise<Row[]> {
  const [headings = [], ...rest] = await bench(sheet.page, (hooks, t) => hooks.getValues(t, "A1:Z"), tab);
  return rest.flatMap((row, index) =>
    row[0] === null || row[0] === ""
      ? []
      : [{ ...Object.fromEntries(row.map((value, at) => [String(headings[at]), value])), at: index + 2 }],
  );
}

async function columnOf(tab: string, heading: string): Promise<string> {
  const [headings = []] = await bench(sheet.page, (hooks, t) => hooks.getValues(t, "A1:Z1"), tab);
  return String.fromCharCode(65 + headings.indexOf(heading));
}

/** A day's serial number in the sheet. */
const serial = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / 86_400_000 + 25_569;

describe("a claim", () => {
  it(
    "is written down once, and becomes a trial whose groups are drawn",
    async () => {
      const { panel } = sheet;
      await panel.getByRole("button", { name: "Claims" }).click();
      await panel.getByRole("main").getByLabel("Your name").fill("Wren");
      await panel.getByRole("button", { name: "Save name" }).click();
      await panel.getByText("Logged as Wren.").waitFor();
      await panel.getByLabel("What is said to help").fill("Rain water makes more leaves");
      await panel.getByLabel("Who says so").fill("Bo, two doors down");
      await panel.getByLabel("Years at it").fill("6,5");
      await panel.getByLabel("Their pots, light, water").fill("Clay on a balcony");
      const before = (await rows("Claims")).length;
      await panel.getByRole("button", { name: "Save this claim" }).dblclick();
      await panel.getByText("The claim is saved.").waitFor();
      const claims = await rows("Claims");
      expect(claims.length).toBe(before + 1);
      const claim = claims.find((row) => row.Claim === "Rain water makes more leaves");
      expect(claim).toMatchObject({ "Years at it": 6.5, Status: "heard", Who: "Wren" });

      await panel.getByText("Rain water makes more leaves").click();
      const item = panel.locator("details.claim", { hasText: "Rain water makes more leaves" });
      await item.getByRole("button", { name: "Try it on some plants" }).click();
      await panel.getByLabel("Question").fill("Does rain water make more leaves?");
      await panel.getByLabel("Group A gets").fill("rain water");
      await panel.getByLabel("Group B gets").fill("town water");
      await panel.getByLabel("Select all").check();
      await panel.getByText("15 pairs proposed").waitFor();
      await panel.getByLabel("Difference that would matter").fill("2");
      await panel.getByRole("button", { name: "How many plants does it take?" }).click();
      await panel.getByText(/in 8 of 10 trials/).waitFor();
      expect(await objections(await panelFrame())).toEqual([]);
      await panel.getByRole("button", { name: "Draw the groups and begin" }).dblclick();
      await panel.getByText(/^The groups are drawn, by the number \d+/).waitFor();

      const trial = (await rows("Trials")).find((row) => row.Question === "Does rain water make more leaves?");
      expect(trial).toMatchObject({ Design: "Pairs", "Group A": "rain water", "Worth seeing": 2, Who: "Wren" });
      expect(String(trial?.["Plants A"]).split("; ")).toHaveLength(15);
      const tried = (await rows("Claims")).filter((row) => row.Claim === "Rain water makes more leaves");
      expect(tried.map((row) => row.Status)).toEqual(["heard", "trying"]);
      expect(tried[1]).toMatchObject({ Corrects: claim?.Id, Trial: trial?.Id });
      const card = panel.locator(".card", { hasText: "Does rain water make more leaves?" });
      await card.getByText(/^It (begins on|runs until)/).waitFor();
      expect(await card.getByRole("button", { name: "Save this result" }).count()).toBe(0);
    },
    STORY_MS,
  );

  it(
    "gets the trial's result when its last day is over: the difference and p that the log gives by hand",
    async () => {
      const { panel } = sheet;
      // Time is made to pass: the trial lies back in the months that the sample's log tells of.
      const begun = (await rows("Trials")).find((row) => row.Question === "Does rain water make more leaves?");
      await type("Trials", `${await columnOf("Trials", "Started")}${begun?.at}`, "2026-05-20");
      await type("Trials", `${await columnOf("Trials", "Ends")}${begun?.at}`, "2026-10-31");
      await panel.getByRole("button", { name: "Read the sheet again" }).click();
      const card = panel.locator(".card", { hasText: "Does rain water make more leaves?" });
      await card.getByRole("button", { name: "Save this result" }).click();
      await panel.getByText("The result is in the sheet.").waitFor();

      const log = await rows("Care log");
      const leaves = (side: unknown) =>
        String(side)
          .split("; ")
          .map(
            (plant) =>
              log.filter(
                ({ Plant, Event, Date: day }) =>
                  Plant === plant &&
                  Event === "New leaf" &&
                  Number(day) > serial("2026-05-20") &&
                  Number(day) <= serial("2026-10-31"),
              ).length,
          );
      const b = leaves(begun?.["Plants B"]);
      const differences = leaves(begun?.["Plants A"]).map((count, pair) => count - (b[pair] ?? 0));
      const seen = differences.reduce((sum, one) => sum + one, 0);
      let asFar = 0;
      for (let way = 0; way < 2 ** 15; way++) {
        const sum = differences.reduce((so, one, pair) => so + (way & (1 << pair) ? -one : one), 0);
        if (Math.abs(sum) >= Math.abs(seen)) asFar += 1;
      }
      const trial = (await rows("Trials")).find(({ Id }) => Id === begun?.Id);
      expect(Number(trial?.Difference)).toBeCloseTo(seen / 15, 9);
      expect(Number(trial?.p)).toBeCloseTo(asFar / 2 ** 15, 9);
      expect(String(trial?.Result)).toMatch(asFar / 2 ** 15 <= 0.05 ? /A difference: / : /Cannot tell yet: /);
      await card.getByText(/^On average A /).waitFor();
      expect(await card.getByRole("button", { name: "Save this result" }).count()).toBe(0);

      await panel.getByRole("button", { name: "Claims" }).click();
      const item = panel.locator("details.claim", { hasText: "Rain water makes more leaves" });
      await item.locator("summary").click();
      await item.getByRole("button", { name: "Change", exact: true }).click();
      await panel.getByLabel("How far it has come here").selectOption("dropped");
      await panel.getByLabel("What came of it").fill("Cannot tell; not worth the carrying");
      await panel.getByRole("button", { name: "Save the change" }).click();
      await panel.getByText("The change is saved; the old row stays.").waitFor();
      await item.getByText("dropped").waitFor();
      const states = (await rows("Claims")).filter((row) => row.Claim === "Rain water makes more leaves");
      expect(states.map((row) => row.Status)).toEqual(["heard", "trying", "dropped"]);
      expect(await objections(await panelFrame())).toEqual([]);
    },
    STORY_MS,
  );
});

it("recovery is drawn with its words and numbers beside it", async () => {
  const { panel } = sheet;
  await panel.getByRole("button", { name: "Growth" }).click();
  await panel.getByRole("img", { name: /Repot: \d+ of \d+ grew again; half had within \d+ days\./ }).waitFor();
  await panel.locator(".plot canvas").waitFor();
  await panel.getByText("The numbers: grown again, and still waited for").click();
  await panel.getByRole("table", { name: "Repot" }).waitFor();
  await panel.getByLabel("A plant, and what it got").selectOption("Heartleaf");
  await panel
    .getByText(/^batch-\d+/)
    .first()
    .waitFor();
  expect(await objections(await panelFrame())).toEqual([]);
  expect(sheet.errors).toEqual([]);
  expect(sheet.outside).toEqual([]);
});
