/** The chemistry of a batch in the panel: EC against a published one, acid in two steps, what falls out, without a page. */

import { describe, expect, test } from "vitest";
import { type AcidDraft, acidStore } from "../../sidebar/acid-draft.ts";
import { work } from "../../sidebar/batch.ts";
import { batchChemistry, withAcid } from "../../sidebar/batch-chemistry.ts";
import { type BatchDraft, freshBatch } from "../../sidebar/batch-draft.ts";
import { readChoices } from "../../sidebar/batch-shelf.ts";
import { mixAcid } from "../../sidebar/mix-acid.ts";
import { ecBandWords } from "../../sidebar/mix-chemistry.tsx";
import { mixChemistry, risksNowAndLater, stepsOf } from "../../sidebar/mix-state.ts";
import { FIRST_SHARE, stateAfter } from "../../src/core/acid-dose.ts";
import { conductivity } from "../../src/core/conductivity.ts";
import { sheet } from "./sheet.ts";
import { memoryStorage, openTestPanel } from "./world.ts";

const base = sheet();
const loaded = sheet({
  feeds: [...base.feeds, { row: 20, fields: { Feed: "Potassium chloride", K: 52.445, Cl: 47.552 } }],
  waters: [
    ...base.waters,
    { row: 9, fields: { Water: "Hard", Ca: 40.08, Alkalinity: 100.09, pH: 8.3 } },
    { row: 10, fields: { Water: "Alkaline", Ca: 40.08, Alkalinity: 100.09 } },
  ],
});
const shelf = readChoices(loaded);

/** A batch of typed doses, g/L. */
function mixed(doses: Readonly<Record<string, string>>, water = "(pure water)") {
  const draft: BatchDraft = {
    ...freshBatch(() => "made-id-1"),
    ...{ mode: "doses", water, feeds: Object.keys(doses), doses, litres: "10" },
  };
  const worked = work(draft, shelf);
  const mix = mixChemistry(worked, loaded.waters);
  if (mix === null) throw new Error(worked.missing ?? worked.problem ?? "There should be a mix.");
  return { worked, mix };
}

const acid = (change: Partial<AcidDraft>): AcidDraft => ({ ...acidStore(null).get(), ...change });

describe("the EC", () => {
  test("of 10 mmol/L potassium chloride is the published 1.412 mS/cm, within 1 %", () => {
    // Usual calibration value at 25 °C (from memory, as in test/reference/meters.json); 0.74551 g/L is 10 mmol/L.
    const { mix } = mixed({ "Potassium chloride": "0.7455" });
    const ec = conductivity(mix.now).at25MsCm;
    expect(Math.abs(ec / 1.412 - 1)).toBeLessThan(0.01);
    // The model's 3 % and what the labels of K and Cl may be off.
    expect(mix.ecShare).toBeGreaterThan(0.03);
    expect(mix.ecShare).toBeLessThan(0.1);
  });

  test("goes into the log with the batch, and the acid with what it adds", () => {
    const salt = batchChemistry(mixed({ "Potassium chloride": "0.7455" }).worked, acid({}), shelf);
    expect(Math.abs((salt.predictedEcMsCm ?? 0) / 1.412 - 1)).toBeLessThan(0.01);
    expect(salt).toMatchObject({ acid: "", adds: {} });
    const { worked } = mixed({ "Potassium nitrate": "0.1" }, "hard");
    const soured = batchChemistry(worked, acid({ acid: "nitric acid", strength: "67" }), shelf);
    expect(soured.acid).toMatch(/^nitric acid 67 %: [\d.]+ mL, to pH 5.8$/i);
    // 2 meq/L of alkalinity, four fifths of it used up (common practice), one N a proton: 1.6 mmol/L of 14.007 mg.
    expect(soured.adds.N).toBeGreaterThan(0.75 * 2 * 14.007);
    expect(soured.adds.N).toBeLessThan(0.85 * 2 * 14.007);
    expect(withAcid({ N: 10, K: 5 }, soured.adds).N).toBe(10 + (soured.adds.N ?? 0));
    expect(
      batchChemistry(mixed({ "Potassium nitrate": "0.5" }, "tap").worked, acid({}), { ...shelf, waterRows: [] })
        .predictedEcMsCm,
    ).toBeNull();
  });

  test("is said in mS/cm, and on the scale of one's own meter", () => {
    expect(ecBandWords(1.412, 0.05, null)).toBe("1.41 ± 0.07 mS/cm at 25 °C.");
    expect(ecBandWords(1.4, 0.05, 500)).toBe(
      "1.40 ± 0.07 mS/cm at 25 °C. Your meter, scale 500, should show 700 ± 35 ppm.",
    );
  });
});

describe("the pH", () => {
  test("is not worked out for a water without an alkalinity, and that is said", () => {
    const { mix } = mixed({ "Potassium nitrate": "0.5" }, "tap");
    expect(mix.standing).toBeNull();
    expect(mix.assumptions[0]).toContain("the water has no alkalinity on the Waters tab");
  });

  test("climbs when a bicarbonate water with acid in it stands", () => {
    const { mix } = mixed({ "Potassium nitrate": "0.1" }, "hard");
    const { result } = mixAcid(acid({ acid: "nitric acid", strength: "67" }), mix.now);
    expect(result?.dose.state.pH).toBeCloseTo(5.8, 3);
    expect(result?.standing.pH).toBeGreaterThan(7);
  });

  test("of a water whose own pH is not on the tab rests on one that is named", () => {
    const { mix } = mixed({ "Potassium nitrate": "0.1" }, "alkaline");
    expect(mix.assumptions.join(" ")).toContain("taken as 7.5");
  });
});

describe("the acid", () => {
  const { mix } = mixed({ "Potassium nitrate": "0.1" }, "hard");

  test("takes as much of the alkalinity as the closed carbonate equilibrium says", () => {
    // Plummer & Busenberg 1982: from pH 8.3 and 2 meq/L, 78.1 % is used up at pH 5.8, activity coefficients 1; nitric
    // acid of 67 %, 1.40 g/mL (memory), is 14.9 mol/L. Salts in the water move it by a few percent.
    const { result } = mixAcid(acid({ acid: "nitric acid", strength: "67" }), mix.now);
    const expectedMl = (0.781 * 2) / ((670 * 1.4) / 63.012);
    expect(Math.abs((result?.dose.perLitre ?? 0) / expectedMl - 1)).toBeLessThan(0.04);
    expect(result?.dose.adds.N).toBeCloseTo((result?.dose.molPerL ?? 0) * 14007, 6);
  });

  test.each(["phosphoric acid", "nitric acid", "sulfuric acid"])(
    "%s: from the pH that was foreseen after the first part, the rest is a fifth",
    (name) => {
      const draft = acid({ acid: name, strength: "60" });
      const whole = mixAcid(draft, mix.now).result;
      if (whole === null) throw new Error("There should be a dose.");
      const first = stateAfter(mix.now, whole.acid, FIRST_SHARE * whole.dose.molPerL);
      const { result } = mixAcid({ ...draft, measuredPH: first.pH.toFixed(6) }, mix.now);
      expect((result?.rest ?? 0) / whole.dose.perLitre).toBeCloseTo(1 - FIRST_SHARE, 3);
    },
  );

  test("is done when the measured pH is there already", () => {
    const { result } = mixAcid(acid({ acid: "citric acid", measuredPH: "5,6" }), mix.now);
    expect(result?.dose.unit).toBe("g");
    expect(result?.rest).toBe(0);
  });

  test.each<[Partial<AcidDraft>, RegExp]>([
    [{ acid: "phosphoric acid" }, /Type the strength in percent/],
    [{ acid: "phosphoric acid", strength: "99" }, /outside what phosphoric acid comes in/],
    [{ acid: "potassium hydroxide" }, /raises the pH/],
    [{ acid: "citric acid", targetPH: "8.9" }, /lowers the pH/],
  ])("%o is answered with a sentence", (change, words) => {
    const { result, problem } = mixAcid(acid(change), mix.now);
    expect(result).toBeNull();
    expect(problem).toMatch(words);
  });

  test("that cannot be read is told at its field, and none is no problem", () => {
    expect(mixAcid(acid({ acid: "citric acid", strength: "strong" }), mix.now).strength.problem).not.toBeNull();
    expect(mixAcid(acid({ acid: "citric acid", targetPH: "58" }), mix.now).target.problem).not.toBeNull();
    expect(mixAcid(acid({}), mix.now)).toMatchObject({ result: null, problem: null });
  });

  test("is kept while the panel is closed; what is spoilt is dropped", async () => {
    const storage = memoryStorage();
    const { panel } = await openTestPanel({}, storage);
    panel.acid.change((now) => ({ ...now, acid: "nitric acid", strength: "60" }));
    expect((await openTestPanel({}, storage)).panel.acid.get()).toMatchObject({ acid: "nitric acid", strength: "60" });
    storage.setItem("stillroot.acid", '{"acid":"vinegar"}');
    expect((await openTestPanel({}, storage)).panel.acid.get()).toEqual(acid({}));
  });
});

describe("what may fall out", () => {
  // Hoagland & Arnon 1950, solution 1, grams from CIAAW weights: it meets brushite saturation near pH 6.4.
  const { worked, mix } = mixed({
    "Potassium nitrate": "0.5055",
    "Calcium nitrate tetrahydrate": "1.1807",
    "Potassium dihydrogen phosphate": "0.1361",
    "Magnesium sulfate heptahydrate": "0.4929",
  });
  const solids = (targetPH: string): string[] => {
    const { result } = mixAcid(acid({ acid: "potassium hydroxide", targetPH }), mix.now);
    if (result === null) throw new Error("There should be a dose.");
    return risksNowAndLater(result.dose.state, null).now.map(({ solid }) => solid);
  };

  test("is nothing at pH 6, and calcium phosphate at pH 6.8", () => {
    expect(solids("6")).toEqual([]);
    expect(solids("6.8")).toContain("brushite");
  });

  test("later is what only comes when the pH has climbed", () => {
    const { result } = mixAcid(acid({ acid: "potassium hydroxide", targetPH: "6.8" }), mix.now);
    if (result === null) throw new Error("There should be a dose.");
    const { now, later } = risksNowAndLater(mix.now, result.dose.state);
    expect(now).toEqual([]);
    expect(later.map(({ solid }) => solid)).toContain("brushite");
  });

  test("is kept apart: calcium last, and never with sulfate or phosphate undiluted", () => {
    const order = stepsOf(worked, { acid: null, ...shelf });
    const fed = order?.steps.filter(({ kind }) => kind === "feed").map(({ what }) => what) ?? [];
    expect(fed[fed.length - 1]).toBe("Calcium nitrate tetrahydrate");
    expect(order?.apart).toContain("Never mix Calcium nitrate tetrahydrate with");
  });
});

test("a whole batch with acid is worked out within 10 ms", () => {
  const times = Array.from({ length: 30 }, (_, index) => {
    const started = performance.now();
    const { mix } = mixed({ "Potassium nitrate": `0.${index + 1}`, "Calcium nitrate tetrahydrate": "0.4" }, "hard");
    mixAcid(acid({ acid: "phosphoric acid", strength: "75", measuredPH: "6.3" }), mix.now);
    return performance.now() - started;
  });
  expect(times.sort((a, b) => a - b)[15]).toBeLessThan(10);
});
