/** The meter as a check: a simulation of good batches and single slips, and the verdict in words. */

import { describe, expect, it } from "vitest";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { type Mixture, type MixtureDose, mixtureOf } from "../../src/core/mixture.ts";
import { type CheckTask, checkReading, type Slip, type SlipKind } from "../../src/core/slips.ts";
import { percentOf } from "./formula.ts";
import { refusal } from "./refusal.ts";

const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);
const feed = (name: string, label: string, density: number | null = null): Feed =>
  feedOf(name, parseLabel(label, density), density);

/** Equivalent conductivities at 25 °C, S cm²/eq, CRC Handbook, less a little for strength: a model apart from the one shipped. */
function ecOf({ amounts, nitrogenMgL }: Mixture): number {
  const { nitrate, ammonium, unstated } = nitrogenMgL;
  const ions: [number, number][] = [
    [73.48, (amounts.K ?? 0) / 39.1],
    [59.47, (amounts.Ca ?? 0) / 20.04],
    [53.0, (amounts.Mg ?? 0) / 12.15],
    [73.5, (ammonium + unstated / 2) / 14.007],
    [71.42, (nitrate + unstated / 2) / 14.007],
    [36, (amounts.P ?? 0) / 30.97],
    [80, (amounts.S ?? 0) / 16.03],
    [76.31, (amounts.Cl ?? 0) / 35.45],
    [50.08, (amounts.Na ?? 0) / 22.99],
  ];
  const meq = ions.reduce((sum, [, amount]) => sum + amount, 0);
  return (ions.reduce((sum, [lambda, amount]) => sum + lambda * amount, 0) / 1000) * (1 - 0.06 * Math.sqrt(meq / 20));
}

/** A small generator of its own, so that the simulation is the same on every run (mulberry32). */
function generator(start: number): () => number {
  let state = start;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const [kno3, caNo3, kh2po4, mgSo4] = ["KNO3", "Ca(NO3)2.4H2O", "KH2PO4", "MgSO4.7H2O"].map(salt) as [
  Feed,
  Feed,
  Feed,
  Feed,
];
const RECIPES: readonly (readonly MixtureDose[])[] = [
  // Hoagland & Arnon 1950, solution 1, at half strength.
  [
    { feed: kno3, perLitre: 0.2528 },
    { feed: caNo3, perLitre: 0.5904 },
    { feed: kh2po4, perLitre: 0.068 },
    { feed: mgSo4, perLitre: 0.2465 },
  ],
  [
    { feed: feed("Base", "N 10 NO3-N 7 NH4-N 3 P2O5 5 K2O 20 MgO 3"), perLitre: 0.6 },
    { feed: caNo3, perLitre: 0.4 },
  ],
  [
    { feed: feed("Base", "N 8 NO3-N 6 NH4-N 2 P2O5 4 K2O 16 Mg 2 S 3"), perLitre: 0.5 },
    { feed: caNo3, perLitre: 0.35 },
    { feed: mgSo4, perLitre: 0.2 },
  ],
  [
    { feed: feed("A", "N 4 NO3-N 4 Ca 5", 1.2), perLitre: 2 },
    { feed: feed("B", "N 1 NO3-N 1 P2O5 4 K2O 6 Mg 1", 1.2), perLitre: 2 },
  ],
  [
    { feed: kno3, perLitre: 0.15 },
    { feed: caNo3, perLitre: 0.45 },
    { feed: kh2po4, perLitre: 0.1 },
    { feed: mgSo4, perLitre: 0.2 },
    { feed: salt("K2SO4"), perLitre: 0.1 },
    { feed: salt("NH4NO3"), perLitre: 0.06 },
  ],
];

interface Simulated {
  readonly task: CheckTask;
  readonly kind: SlipKind | null;
  readonly fits: (slip: Slip | undefined) => boolean;
}

/** What the one who asks knows: whether the reading was corrected, and which other volumes are filled at times. */
const WAYS = {
  "the correction known, half or double the volume": { correctionKnown: true, volumes: [5, 20] },
  "as the panel asks: the correction not known, usual volumes besides": {
    correctionKnown: false,
    volumes: [5, 20, 15, 8],
  },
} as const;

type Way = (typeof WAYS)[keyof typeof WAYS];

/** A household with a bias of its own up to ±3 %, each reading off by up to ±5 % more; history of good batches. */
function simulate(random: () => number, slip: boolean, way: Way): Simulated {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const noise = () => 1 + 0.1 * (random() - 0.5);
  const doses = pick(RECIPES);
  const water = pick([{}, { Ca: 20, Mg: 4, Na: 8, S: 6, Cl: 10 }]);
  const bias = 1 + 0.06 * (random() - 0.5);
  const readings = pick([0, 3, 8, 12, 20, 30]);
  const history = Array.from({ length: readings }, () => bias * noise());
  const meter = {
    scale: pick([null, 500, 640, 700]),
    tempC: pick([null, 15, 18, 20, 28]),
    corrected: pick([true, false]),
  };
  const { scale, tempC, corrected } = meter;
  const mixed = (factor: (index: number) => number) =>
    ecOf(
      mixtureOf(
        doses.map(({ feed: one, perLitre }, k) => ({ feed: one, perLitre: perLitre * factor(k) })),
        water,
      ),
    );
  const right = mixed(() => 1);
  let reads = right;
  let kind: SlipKind | null = null;
  let words = "";
  let name = "";
  if (slip) {
    const kinds: SlipKind[] = ["doubled", "forgotten", "volume"];
    if (scale !== null) kinds.push("scale");
    if (tempC !== null) kinds.push(corrected ? "corrected twice" : "not corrected");
    kind = pick(kinds);
    const which = Math.floor(random() * doses.length);
    const rise = 1 + 0.0191 * ((tempC ?? 25) - 25);
    if (kind === "doubled" || kind === "forgotten") {
      name = doses[which]?.feed.name ?? "";
      const factor = kind === "doubled" ? 2 : 0;
      reads = mixed((k) => (k === which ? factor : 1));
    } else if (kind === "volume") {
      const filled = pick<number>(way.volumes);
      words = `were ${filled} L`;
      reads = mixed(() => 10 / filled);
    } else if (kind === "scale") {
      const shown = pick([500, 640, 700].filter((one) => one !== scale));
      words = `the ${shown} scale`;
      reads = (right * shown) / (scale ?? 1);
    } else reads = kind === "not corrected" ? right * rise : right / rise;
  }
  const asked = { ...meter, corrected: way.correctionKnown ? corrected : null };
  const measuredMsCm = reads * bias * noise();
  const task = { measuredMsCm, doses, water, litres: 10, ecOf, history, meter: asked, otherLitres: way.volumes };
  return {
    task,
    kind,
    fits: (one) => one !== undefined && one.kind === kind && one.feed === name && one.words.includes(words),
  };
}

describe.each(Object.entries(WAYS))("simulated batches, ±5 % meter noise, %s", (_, way) => {
  it("no alarm on at least 97 % of 3000 good ones, nor doubt on at least 97 %", () => {
    const random = generator(1);
    let alarms = 0;
    let doubts = 0;
    for (let turn = 0; turn < 3000; turn++) {
      const { verdict } = checkReading(simulate(random, false, way).task);
      if (verdict === "look again") alarms += 1;
      if (verdict !== "as expected") doubts += 1;
    }
    expect(alarms / 3000).toBeLessThanOrEqual(0.03);
    expect(doubts / 3000).toBeLessThanOrEqual(0.03);
  });

  it("the true slip is among the first two named in at least 80 % of those outside the band, and most are outside", () => {
    const random = generator(2);
    let outside = 0;
    let named = 0;
    let unsaid = 0;
    for (let turn = 0; turn < 3000; turn++) {
      const { task, fits } = simulate(random, true, way);
      const { verdict, slips, alike, sentence } = checkReading(task);
      if (verdict === "as expected") continue;
      outside += 1;
      if (slips.slice(0, 2).some(fits)) named += 1;
      // Whatever explains it about equally well is said, all of it.
      const said = slips.slice(0, alike).every(({ words }) => sentence.includes(words));
      if (!said || sentence.includes("Several slips") !== alike > 1) unsaid += 1;
    }
    expect(unsaid).toBe(0);
    expect(named / outside).toBeGreaterThanOrEqual(0.8);
    expect(outside / 3000).toBeGreaterThanOrEqual(0.7);
  });
});

describe("the verdict", () => {
  const doses = RECIPES[0] ?? [];
  const right = ecOf(mixtureOf(doses, {}));
  const meter = { scale: null, tempC: null, corrected: null };
  const history = [1.01, 0.99, 1.02, 1, 0.98, 1.03, 1.01, 0.99, 1, 1.02];
  const base = { doses, water: {}, litres: 10, ecOf, history, meter };

  it("as expected", () => {
    const check = checkReading({ ...base, measuredMsCm: right * 1.01 });
    expect(check.verdict).toBe("as expected");
    expect(check.slips).toEqual([]);
    expect(check.sentence).toMatch(/^As expected: the meter reads .* mS\/cm, and .* to .* was to be expected\.$/);
  });

  it("a doubled calcium nitrate is named", () => {
    const twice = doses.map((dose) => (dose.feed === caNo3 ? { ...dose, perLitre: dose.perLitre * 2 } : dose));
    const check = checkReading({ ...base, measuredMsCm: ecOf(mixtureOf(twice, {})) });
    expect(check.verdict).toBe("look again");
    expect(check.slips[0]).toMatchObject({ kind: "doubled", feed: "Ca(NO3)2.4H2O" });
    expect(check.alike).toBe(1);
    expect(check.sentence).toContain("It would fit if Ca(NO3)2.4H2O went in twice.");
  });

  it("two slips that read the same are both named", () => {
    const twin = [
      { feed: feed("Left", "N 10 NO3-N 10 K 28 elemental"), perLitre: 0.5 },
      { feed: feed("Right", "N 10 NO3-N 10 K 28 elemental"), perLitre: 0.5 },
      { feed: caNo3, perLitre: 0.5 },
    ];
    const reads = ecOf(mixtureOf(twin.slice(1), {}));
    const check = checkReading({ ...base, doses: twin, measuredMsCm: reads });
    expect(
      check.slips
        .slice(0, 2)
        .map(({ feed: name }) => name)
        .sort(),
    ).toEqual(["Left", "Right"]);
    expect(check.slips[0]?.weight).toBeCloseTo(check.slips[1]?.weight ?? 0, 9);
    expect(check.alike).toBeGreaterThanOrEqual(2);
    expect(check.sentence).toContain("Several slips explain it about equally well");
  });

  it("a reading that nothing explains is said to be so", () => {
    const check = checkReading({ ...base, measuredMsCm: right * 8 });
    expect(check.slips).toEqual([]);
    expect(check.sentence).toContain("No single slip explains it: measure once more, and calibrate the meter.");
  });

  it("between the two bands of a short history nobody can tell", () => {
    const check = checkReading({ ...base, history: [1, 1.01], measuredMsCm: right * 1.09 });
    expect(check.verdict).toBe("not enough history");
    expect(check.sentence).toContain("There are not enough earlier readings");
    expect(checkReading({ ...base, history: [1, 1.01], measuredMsCm: right * 1.5 }).verdict).toBe("look again");
  });

  it("a household's own bias is learned", () => {
    const low = Array.from({ length: 12 }, (_, k) => 0.9 + 0.002 * (k % 5));
    expect(checkReading({ ...base, history: low, measuredMsCm: right * 0.905 }).verdict).toBe("as expected");
    expect(checkReading({ ...base, history: low, measuredMsCm: right * 1.05 }).verdict).toBe("look again");
  });

  it("a reading of 0 and an empty batch are refused", () => {
    expect(refusal(() => checkReading({ ...base, measuredMsCm: 0 }))).toBe(
      "The reading is 0 mS/cm. Give a number above 0.",
    );
    expect(refusal(() => checkReading({ ...base, doses: [], measuredMsCm: 1 }))).toBe(
      "Nothing that conducts is in this batch.",
    );
  });
});
