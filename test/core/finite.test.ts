/** Every exported function of the arithmetic of water, feeds, roots and records: finite input never gives NaN or infinity. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as analysis from "../../src/core/analysis.ts";
import * as calendar from "../../src/core/calendar.ts";
import * as cells from "../../src/core/cell.ts";
import * as dose from "../../src/core/dose.ts";
import * as elements from "../../src/core/elements.ts";
import * as errors from "../../src/core/errors.ts";
import * as events from "../../src/core/events.ts";
import * as feeds from "../../src/core/feeds.ts";
import * as hardness from "../../src/core/hardness.ts";
import * as label from "../../src/core/label.ts";
import * as leastSquares from "../../src/core/least-squares.ts";
import * as meter from "../../src/core/meter.ts";
import * as mix from "../../src/core/mix.ts";
import * as nnls from "../../src/core/nnls.ts";
import * as numberText from "../../src/core/number-text.ts";
import * as oxides from "../../src/core/oxides.ts";
import * as reading from "../../src/core/reading.ts";
import * as roots from "../../src/core/roots.ts";
import * as saying from "../../src/core/saying.ts";
import * as shortfall from "../../src/core/shortfall.ts";
import * as solve from "../../src/core/solve.ts";
import * as waters from "../../src/core/waters.ts";
import { drawn } from "../drawn.ts";

const MODULES = {
  analysis,
  calendar,
  cells,
  dose,
  elements,
  errors,
  events,
  feeds,
  hardness,
  label,
  leastSquares,
  meter,
  mix,
  nnls,
  numberText,
  oxides,
  reading,
  roots,
  saying,
  shortfall,
  solve,
  waters,
};

/** Any finite number: 0, the tiniest, the largest, and the ordinary ones a person meets. */
const any = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: 0, max: 300, noNaN: true }),
  fc.integer({ min: -10, max: 30_000 }),
);
/** Where sums of squares are formed, up to what double precision can square and add. */
const squarable = fc.double({ min: -1e150, max: 1e150, noNaN: true });
const text = fc.oneof(fc.string(), any.map(String), fc.constantFrom("10-5-5", "2026-03-01", "Repot", "Fern", "1,234"));
const raw = fc.oneof(any, text, fc.boolean(), fc.constant(undefined));
const cell: fc.Arbitrary<cells.Cell> = fc.oneof(
  raw.map((value) => cells.readCell(value, () => null)),
  fc.integer({ min: -719_528, max: 2_932_896 }).map((day): cells.Cell => ({ kind: "day", day })),
);
const unit = fc.constantFrom(...dose.DOSE_UNITS);
const amounts = fc.dictionary(fc.constantFrom(...elements.SYMBOLS), any).map((some): elements.Amounts => some);
const fields = fc.dictionary(
  fc.constantFrom("Feed", "Dose", "Unit", "Density", "EC", "pH", "SO4", ...analysis.LABEL_TERMS),
  raw,
);
const named = fields.map((some) => ({ fields: some, where: "row 2" }));
const density = fc.oneof(fc.constant(null), fc.double({ min: 0.3, max: 3, noNaN: true }));
const declaration = fc.record({
  basis: fc.constantFrom<analysis.Basis>("w/w", "w/v"),
  densityGPerMl: density,
  what: fc.constant("It"),
});
const printed = fc
  .dictionary(fc.constantFrom(...analysis.LABEL_TERMS), fc.oneof(any, fc.double({ min: 0, max: 10, noNaN: true })))
  .map((some) => new Map(Object.entries(some)) as analysis.Printed);
const share = fc.double({ min: 0, max: 6, noNaN: true });
const feed: fc.Arbitrary<feeds.Feed> = fc
  .tuple(share, share, share, share, declaration)
  .map(([n, p, k, ca, how]) =>
    feeds.feedOf(
      "A",
      label.parseLabel(`${n.toFixed(3)}-${p.toFixed(3)}-${k.toFixed(3)} Ca ${ca.toFixed(3)} ${how.basis}`),
      how.densityGPerMl,
    ),
  );
const parts = fc.array(fc.record({ feed, dose: any, unit }), { maxLength: 4 });
const task = fc.record({ wanted: amounts, feeds: fc.array(feed, { maxLength: 6 }), water: amounts });
const matrix = fc.integer({ min: 0, max: 5 }).chain((rows) => {
  const vector = fc.array(squarable, { minLength: rows, maxLength: rows });
  return fc.tuple(fc.array(vector, { maxLength: 6 }), vector);
});
const log = fc.array(fc.record({ day: any, plant: text, event: fc.constantFrom("Repot", "Top up", "?") }));
const convertUnit = fc.constantFrom(...hardness.CONVERT_UNITS);
const scale = fc.oneof(any, fc.constantFrom(...meter.METER_SCALES));

const calls = <Inputs extends unknown[]>(
  inputs: { [Index in keyof Inputs]: fc.Arbitrary<Inputs[Index]> },
  call: (...values: Inputs) => unknown,
): fc.Arbitrary<() => unknown> => fc.tuple(...inputs).map((values) => () => call(...(values as Inputs)));

/** How each exported function is called; a function that is not here fails the last test. */
const CALLS: Record<string, fc.Arbitrary<() => unknown>> = {
  "analysis.labelFrom": calls([printed, declaration], analysis.labelFrom),
  "calendar.dayFromCivil": calls([any, any, any], calendar.dayFromCivil),
  "calendar.civilFromDay": calls([any], calendar.civilFromDay),
  "calendar.dayFromIso": calls([text], calendar.dayFromIso),
  "calendar.isoFromDay": calls([any], calendar.isoFromDay),
  "cells.readCell": calls([raw], (value) => cells.readCell(value, () => null)),
  "cells.headingKey": calls([text], cells.headingKey),
  "cells.nameKey": calls([text], cells.nameKey),
  "dose.measureUnit": calls([feed], dose.measureUnit),
  "dose.amountsPerUnit": calls([feed, unit], dose.amountsPerUnit),
  "dose.checkDose": calls([any, unit], (value, some) => dose.checkDose(value, some, "A")),
  "dose.doseAmounts": calls([feed, any, unit], dose.doseAmounts),
  "elements.elementOf": calls([text], elements.elementOf),
  "elements.parseElements": calls([text], elements.parseElements),
  "errors.isBadInput": calls([raw], errors.isBadInput),
  "events.eventRule": calls([text, fc.boolean()], (event, disturbsRoots) =>
    events.eventRule([{ event, disturbsRoots }]).find(event),
  ),
  "feeds.fieldCell": calls([fields], (some) => feeds.fieldCell(some, "N")),
  "feeds.readDensity": calls([cell], (some) => feeds.readDensity(some, "Density")),
  "feeds.feedOf": calls([any], (value) => feeds.feedOf("A", label.parseLabel("10-5-5"), value)),
  "feeds.readShelfFeed": calls([fields], (some) => feeds.readShelfFeed(some, "row 2")),
  "feeds.readShelf": calls([fc.array(named)], feeds.readShelf),
  "feeds.feedByName": calls([fc.array(named), text], (rows, name) => feeds.feedByName(feeds.readShelf(rows), name)),
  "hardness.hardness": calls([any, any], (calciumMgL, magnesiumMgL) => hardness.hardness({ calciumMgL, magnesiumMgL })),
  "hardness.convertHardness": calls([any, convertUnit, convertUnit], hardness.convertHardness),
  "hardness.hardnessClass": calls([any], hardness.hardnessClass),
  "label.parseLabel": calls([text, density], label.parseLabel),
  "label.readLabel": calls([cell, density], label.readLabel),
  "leastSquares.dot": calls([matrix], ([, vector]) => leastSquares.dot(vector, vector)),
  "leastSquares.lengthOf": calls([matrix], ([, vector]) => leastSquares.lengthOf(vector)),
  "leastSquares.leastSquares": calls([matrix], ([columns, wanted]) => {
    const unitColumns = columns
      .map((column) => column.map((value) => value / Math.hypot(...column)))
      .filter((column) => column.every(Number.isFinite));
    return leastSquares.leastSquares(unitColumns, wanted);
  }),
  "meter.meterScale": calls([scale], meter.meterScale),
  "meter.ecAt25": calls([any, any], meter.ecAt25),
  "meter.tdsFromEc": calls([any, scale], meter.tdsFromEc),
  "meter.ecFromTds": calls([any, scale], meter.ecFromTds),
  "mix.mixAmounts": calls([parts, amounts], mix.mixAmounts),
  "mix.readRecipe": calls([fc.array(named)], (rows) => mix.readRecipe(rows, feeds.readShelf(rows))),
  "nnls.nonNegativeLeastSquares": calls([matrix], ([columns, wanted]) => nnls.nonNegativeLeastSquares(columns, wanted)),
  "numberText.readNumberText": calls([text], (some) => numberText.readNumberText(some, { what: "It" })),
  "oxides.oxideElement": calls([fc.constantFrom(...oxides.OXIDES)], oxides.oxideElement),
  "oxides.oxideFactor": calls([fc.constantFrom(...oxides.OXIDES)], oxides.oxideFactor),
  "reading.readNumberText": calls([text], (some) => reading.readNumberText(some, { what: "It" })),
  "reading.checkNumber": calls([any], (value) => reading.checkNumber(value, { what: "It" })),
  "reading.readNumber": calls([cell], (some) => reading.readNumber(some, { what: "It" })),
  "reading.readDay": calls([cell], (some) => reading.readDay(some, "It")),
  "reading.readYesNo": calls([cell], (some) => reading.readYesNo(some, "It")),
  "reading.readChoice": calls([cell], (some) => reading.readChoice(some, { what: "It", choices: ["a", "b"] })),
  "reading.readText": calls([cell], (some) => reading.readText(some, "It")),
  "roots.eventRule": calls([text], (event) => roots.eventRule().find(event)),
  "roots.indexDisturbances": calls([log], (rows) => [
    ...roots.indexDisturbances(rows, roots.eventRule()).byPlant.values(),
  ]),
  "roots.lastDisturbance": calls([log, text, any], (rows, plant, asOf) =>
    roots.lastDisturbance(roots.indexDisturbances(rows, roots.eventRule()), plant, asOf),
  ),
  "roots.daysAtRest": calls([log, text, any], (rows, plant, asOf) =>
    roots.daysAtRest(roots.indexDisturbances(rows, roots.eventRule()), plant, asOf),
  ),
  "roots.rootBoard": calls([log, fc.array(text), any], (rows, plants, asOf) =>
    roots.rootBoard(plants, roots.indexDisturbances(rows, roots.eventRule()), asOf),
  ),
  "roots.restWord": calls([any, any], roots.restWord),
  "roots.plantsTwice": calls([fc.array(text)], roots.plantsTwice),
  "saying.sayNumber": calls([any], saying.sayNumber),
  "saying.sayGiven": calls([any], saying.sayGiven),
  "saying.sayList": calls([fc.array(text)], (words) => saying.sayList(words, "or")),
  "shortfall.whyNotReached": calls([task], (some) => solve.solveDoses(some).notReached.map(({ why }) => why)),
  "solve.doseProblem": calls([task], solve.doseProblem),
  "solve.reachedBy": calls([fc.array(feed), amounts], (some, water) =>
    solve.reachedBy(
      some.map((one) => dose.amountsPerUnit(one, one.liquid && one.label.basis === "w/v" ? "mL/L" : "g/L")),
      some.map(() => 1),
      water,
    ),
  ),
  "solve.solveDoses": calls([task], solve.solveDoses),
  "waters.checkAmounts": calls([amounts], (some) => waters.checkAmounts(some, "It")),
  "waters.readWater": calls([fields], (some) => waters.readWater(some, "row 2")),
  "waters.readTarget": calls([fields], (some) => waters.readTarget(some, "row 2")),
};

/** Every number in an answer, and every text, however deep. */
function leaves(answer: unknown): unknown[] {
  if (answer instanceof Map) return [...answer.values()].flatMap(leaves);
  if (answer !== null && typeof answer === "object") return Object.values(answer).flatMap(leaves);
  return [answer];
}

describe("finite input", () => {
  it.each(Object.entries(CALLS))("%s", (_, call) => {
    fc.assert(
      fc.property(call, (run) => {
        let answer: unknown = null;
        try {
          answer = run();
        } catch (error) {
          expect(["BadInput", "NoConvergence"]).toContain((error as Error).name);
          answer = (error as Error).message;
        }
        for (const leaf of leaves(answer)) {
          if (typeof leaf === "number") expect(Number.isFinite(leaf)).toBe(true);
        }
      }),
      { numRuns: drawn(300) },
    );
  });

  it("no exported function is left out", () => {
    const exported = Object.entries(MODULES).flatMap(([module, members]) =>
      Object.entries(members)
        .filter(([, member]) => typeof member === "function" && !/^class\b/.test(String(member)))
        .map(([name]) => `${module}.${name}`),
    );
    expect(Object.keys(CALLS).sort()).toEqual(exported.sort());
  });
});
