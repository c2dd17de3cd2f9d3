/** Single slips one by one, worked out by hand for a batch whose EC is 0.01 mS/cm for each mg/L of potassium or calcium. */

import { describe, expect, test } from "vitest";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import type { EcOf } from "../../src/core/mixture.ts";
import { type CheckTask, checkReading, type SlipKind } from "../../src/core/slips.ts";

const feed = (name: string, label: string): Feed => feedOf(name, parseLabel(label), null);
const ecOf: EcOf = ({ amounts }) => {
  const mgL = (amounts.K ?? 0) + (amounts.Ca ?? 0);
  if (!(mgL >= 0 && mgL < 1e6)) throw new Error(`No water holds ${mgL} mg/L.`);
  return mgL / 100;
};
/** 100 mg/L and 50 mg/L: 1.5 mS/cm in all. */
const KALI = { feed: feed("Kali", "K 10 elemental"), perLitre: 1 };
const KALK = { feed: feed("Kalk", "Ca 10"), perLitre: 0.5 };
const PINCH = { feed: feed("Pinch", "K 10 elemental"), perLitre: 0.015 };
const NOTHING = { feed: feed("Nothing", "K 10 elemental"), perLitre: 0 };

const check = (measuredMsCm: number, task: Partial<CheckTask> = {}) =>
  checkReading({
    ...{ measuredMsCm, doses: [KALI, KALK], water: {}, litres: 10, ecOf, meterShare: 0.02 },
    // a household whose readings were right each time
    history: Array.from({ length: 30 }, () => 1),
    meter: { scale: null, tempC: null, corrected: null },
    ...task,
  });
const meter = (scale: number | null, tempC: number | null, corrected: boolean | null = null) => ({
  meter: { scale, tempC, corrected },
});

describe("a reading that is exactly what one slip would give", () => {
  // 1 + 0.0191 (15 - 25) = 0.809 [EPA Method 120.1]
  test.each<[SlipKind, string, number, RegExp, Partial<CheckTask>]>([
    ["doubled", "Kali", 2.5, /^Kali .*twice/, {}],
    ["forgotten", "Kali", 0.5, /^Kali .*left out/, {}],
    ["doubled", "Kalk", 2, /^Kalk .*twice/, {}],
    ["forgotten", "Kalk", 1, /^Kalk .*left out/, {}],
    ["volume", "", 3, /\b5 L .*\b10\b/, {}],
    ["volume", "", 0.75, /\b20 L .*\b10\b/, {}],
    ["volume", "", 1.875, /\b8 L .*\b10\b/, { otherLitres: [8] }],
    ["scale", "", 1.92, /\b640\b.*\b500\b/, meter(500, null)],
    ["scale", "", 2.1, /\b700\b.*\b500\b/, meter(500, null)],
    ["scale", "", (1.5 * 500) / 700, /\b500\b.*\b700\b/, meter(700, null)],
    ["not corrected", "", 1.5 * 0.809, /not corrected from 15 to 25/, meter(null, 15)],
    ["not corrected", "", 1.5 * 1.191, /not corrected from 35 to 25/, meter(null, 35, false)],
    ["corrected twice", "", 1.5 / 0.809, /corrected from 15 to 25 °C twice/, meter(null, 15)],
    ["corrected twice", "", 1.5 / 1.191, /corrected from 35 to 25 °C twice/, meter(null, 35, true)],
  ])("%s %s at %d mS/cm is explained by it", (kind, name, reads, words, task) => {
    const { slips, verdict, sentence, alike, predictedMsCm } = check(reads, task);
    expect(predictedMsCm).toBeCloseTo(1.5, 12);
    expect(verdict).toBe("look again");
    expect(slips[0]).toMatchObject({ kind, feed: name, words: expect.stringMatching(words) });
    expect(slips[0]?.readsMsCm).toBeCloseTo(reads, 9);
    expect(slips.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(alike).toBe(1);
    expect(sentence).toMatch(/^Look again: the meter reads /);
    expect(sentence).toContain(`It would fit if ${slips[0]?.words}.`);
  });

  test.each<[string, number, Partial<CheckTask>]>([
    ["a scale, on a meter that shows EC", 2.1, {}],
    ["its own scale", 2.1, meter(700, null)],
    ["a temperature that is not known", 1.5 * 0.809, {}],
    ["a correction left out that was made", 1.5 * 0.809, meter(null, 15, true)],
    ["a second correction of what was not corrected once", 1.5 / 0.809, meter(null, 15, false)],
    ["half the water, where the household can only fill other volumes", 3, { otherLitres: [7] }],
    ["no water at all, or the volume that was meant", 3.5, { otherLitres: [0, -5, 10] }],
    ["a feed that was not dosed", 3.5, { doses: [KALI, KALK, NOTHING] }],
  ])("is not explained by %s", (_, reads, task) => {
    const { slips, sentence, alike } = check(reads, task);
    expect([slips, alike]).toEqual([[], 0]);
    expect(sentence).toMatch(/No single slip explains it/);
  });

  test.each<[number, boolean]>([
    // 1 % of 1.5 mS/cm, which nobody can tell from nothing, and 3 %
    [0.015, false],
    [0.045, true],
  ])("a feed of %d g/L, just outside of what was to be expected: named is %s", (perLitre, named) => {
    const doses = [KALI, KALK, { ...PINCH, perLitre }];
    const { band, predictedMsCm } = check(1.5, { doses });
    // so near that either share is within three standard deviations
    expect(Math.log(band.high) - 0.0099).toBeLessThan(3 * band.spread);
    for (const [edge, kind] of [
      [band.high * 1.0001, "doubled"],
      [band.low * 0.9999, "forgotten"],
    ] as const) {
      const { slips, verdict } = check(predictedMsCm * edge, { doses });
      expect(verdict).toBe("look again");
      expect(slips.some((slip) => slip.feed === "Pinch" && slip.kind === kind)).toBe(named);
    }
  });
});

describe("two slips that could both be", () => {
  const alone = { doses: [KALI] };

  test("are weighed by how often each happens when they read the same: 1 to 0.7", () => {
    const { slips, alike, sentence } = check(2, alone);
    expect(slips.map(({ kind }) => kind)).toEqual(["doubled", "volume"]);
    expect(slips[0]?.weight).toBeCloseTo(1 / 1.7, 9);
    expect(slips[1]?.weight).toBeCloseTo(0.7 / 1.7, 9);
    expect(alike).toBe(2);
    expect(sentence).toContain(
      `Several slips explain it about equally well: ${slips[0]?.words} or ${slips[1]?.words}.`,
    );
  });

  test("are weighed by Student's density where one fits less well, best first", () => {
    // 10 L of feed in 4.9 L reads 2.0408 mS/cm
    const { slips, band } = check(2, { ...alone, otherLitres: [4.9] });
    const off = Math.log(10 / 4.9 / 2) / band.spread;
    const density = (1 + off ** 2 / band.freedom) ** (-(band.freedom + 1) / 2);
    expect((slips[1]?.weight ?? 0) / (slips[0]?.weight ?? 0)).toBeCloseTo(0.7 * density, 9);
    const turned = check(10 / 4.9, { ...alone, otherLitres: [4.9] });
    expect(turned.slips.map(({ kind }) => kind)).toEqual(0.7 > density ? ["volume", "doubled"] : ["doubled", "volume"]);
    expect((turned.slips[0]?.weight ?? 0) >= (turned.slips[1]?.weight ?? 0)).toBe(true);
  });

  test("are not both named where one fits far better", () => {
    const { slips, alike, sentence } = check(2, { ...alone, otherLitres: [4.86] });
    expect(slips).toHaveLength(2);
    expect(alike).toBe(1);
    expect(sentence).not.toContain(slips[1]?.words);
  });

  test("are said without a third that fits far less", () => {
    const { slips, alike, sentence } = check(2, { ...alone, otherLitres: [5, 4.86] });
    expect([slips.length, alike]).toEqual([3, 2]);
    expect(sentence).toContain(`: ${slips[0]?.words} or ${slips[1]?.words}.`);
    expect(sentence).not.toContain("4.86");
  });

  test("more than three standard deviations off is no explanation", () => {
    const { band } = check(2, alone);
    const litresAt = (sigmas: number): number => 5 * Math.exp(-sigmas * band.spread);
    expect(check(2, { ...alone, otherLitres: [litresAt(2.99)] }).slips).toHaveLength(2);
    expect(check(2, { ...alone, otherLitres: [litresAt(3.01)] }).slips).toHaveLength(1);
    expect(check(2, { ...alone, otherLitres: [litresAt(-3.01)] }).slips).toHaveLength(1);
  });
});

describe("the household's own middle", () => {
  test("counts before a slip is looked for: a meter that always reads a tenth high", () => {
    const history = Array.from({ length: 30 }, () => 1.1);
    const { slips, band, lowMsCm, highMsCm } = check(2.5 * 1.1, { history });
    expect(slips[0]).toMatchObject({ kind: "doubled", feed: "Kali" });
    expect(band.centre).toBeCloseTo(1.1, 12);
    expect(lowMsCm).toBeCloseTo(1.5 * band.low, 12);
    expect(highMsCm).toBeCloseTo(1.5 * band.high, 12);
    expect(lowMsCm).toBeLessThan(1.65);
    expect(highMsCm).toBeGreaterThan(1.65);
    expect(check(1.65, { history })).toMatchObject({ verdict: "as expected", slips: [], alike: 0 });
  });
});

describe("the bounds themselves", () => {
  // Predicted is 1 mS/cm, so that the reading is the share itself.
  const alone = { doses: [KALI] };
  test.each([0, 30])("are still as expected, or still in doubt, with %d readings", (readings) => {
    const task = { ...alone, history: Array.from({ length: readings }, () => 1) };
    const { band, predictedMsCm } = check(1, task);
    expect(predictedMsCm).toBe(1);
    for (const edge of [band.low, band.high]) expect(check(edge, task).verdict).toBe("as expected");
    if (readings === 0)
      for (const edge of [band.surelyLow, band.surelyHigh])
        expect(check(edge, task).verdict).toBe("not enough history");
    expect(check(band.surelyLow * 0.999, task).verdict).toBe("look again");
    expect(check(band.surelyHigh * 1.001, task).verdict).toBe("look again");
  });
});

describe("the sentence", () => {
  test("says the reading and what was to be expected, in each of the three verdicts", () => {
    const few = { history: [] };
    // with no history the bands are 2 and 4 standard deviations of what labels and meter allow
    const { band } = check(1.5, few);
    const between = 1.5 * Math.exp(3 * band.spread);
    for (const [measured, task, verdict, start] of [
      [1.5, {}, "as expected", "As expected: the meter reads 1.5 mS/cm, and "],
      [2.5, {}, "look again", "Look again: the meter reads 2.5 mS/cm, and "],
      [between, few, "not enough history", "Not enough history: the meter reads "],
      [0.4, few, "look again", "Look again: the meter reads 0.4 mS/cm, and "],
      [1.5 * Math.exp(-3 * band.spread), few, "not enough history", "Not enough history: the meter reads "],
    ] as const) {
      const answer = check(measured, task);
      expect(answer.verdict).toBe(verdict);
      expect(answer.sentence.startsWith(start), answer.sentence).toBe(true);
      expect(answer.sentence).toMatch(/mS\/cm, and [\d.]+ to [\d.]+ was to be expected/);
      expect(answer.sentence.match(/meter reads/g)).toHaveLength(1);
      expect(answer.sentence).toMatch(/\.$/);
    }
  });
});
