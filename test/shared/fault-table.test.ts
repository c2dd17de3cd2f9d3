/**
 * Every action × every call of it × every way in which that call can fail: the sheet holds the record once or not
 * at all, the panel says which, pressing again ends with once, and no other cell has changed.
 */

import { expect, test } from "vitest";
import type { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import { HANDLERS } from "../../src/app/handlers.ts";
import { drawn, fewDraws } from "../drawn.ts";
import { copyGrid, differing, stateOf } from "./copy.ts";
import { FAULTS, type Fault, type Trial, trialOver, WHOLE_FAULTS, type WholeFault } from "./faults.ts";
import { LAYOUTS, type Layout } from "./layouts.ts";
import { ALL_SAMPLES, type AnySample, READS, SAMPLES } from "./samples.ts";

test("every request that the panel may make has a sample", () => {
  expect(Object.keys(SAMPLES).sort()).toEqual(Object.keys(HANDLERS).sort());
  for (const [ask, samples] of Object.entries(SAMPLES)) expect(samples.length, ask).toBeGreaterThan(0);
});

const NOTHING = /Nothing was written|nothing was written/;
const MAYBE = /Trying again is safe: nothing is written twice\./;

type State = Map<string, string>;

/** What is there besides cells: the name that a person gave. */
function stateWithName(trial: Trial): State {
  const state = stateOf(trial.book.grid);
  for (const [key, value] of trial.book.userProperties) state.set(`name ${key}`, value);
  return state;
}

interface Case {
  readonly layout: MemoryGrid;
  readonly sample: AnySample;
  readonly before: State;
  readonly after: State;
}

async function cleanRun(layout: MemoryGrid, sample: AnySample): Promise<Case & { calls: number }> {
  const trial = trialOver(copyGrid(layout));
  const before = stateWithName(trial);
  trial.arm(null);
  const answer = await trial.ask(sample.request);
  expect(answer, sample.what).toEqual({ ok: true, sentence: "" });
  const after = stateWithName(trial);
  const calls = trial.reached();
  expect(await trial.ask(sample.request), `${sample.what} again`).toEqual({ ok: true, sentence: "" });
  expect(differing(after, stateWithName(trial)), `${sample.what} again`).toEqual([]);
  return { layout, sample, before, after, calls };
}

/** What is wrong with one case; nothing when all is as it should be. */
async function violations(clean: Case, fault: Fault | WholeFault, at: number): Promise<string[]> {
  const { layout, sample, before, after } = clean;
  const wrong: string[] = [];
  const trial = trialOver(copyGrid(layout));
  trial.arm(fault, at);
  const answer = await trial.ask(sample.request);
  const now = stateWithName(trial);
  const changed = differing(before, now);
  const stray = changed.filter((key) => now.get(key) !== after.get(key));
  if (stray.length > 0) wrong.push(`other cells changed: ${stray.join("; ")}`);
  const missing = differing(now, after);
  const reads = READS.has(sample.request.ask);
  if (answer.ok && missing.length > 0 && !reads) wrong.push(`said done, and missing: ${missing.join("; ")}`);
  if (!answer.ok) {
    if (!/^\S.*[.”]$/s.test(answer.sentence)) wrong.push(`no sentence: ${answer.sentence}`);
    const [none, maybe] = [NOTHING.test(answer.sentence), MAYBE.test(answer.sentence)];
    if (reads && (none || maybe)) wrong.push(`speaks of writing where nothing is: ${answer.sentence}`);
    if (!reads && none === maybe) wrong.push(`does not say whether it was written: ${answer.sentence}`);
    if (none && changed.length > 0) wrong.push(`said nothing was written, and changed: ${changed.join("; ")}`);
  }
  trial.arm(null);
  const again = await trial.ask(sample.request);
  if (!again.ok) wrong.push(`the retry failed: ${again.sentence}`);
  const left = differing(stateWithName(trial), after);
  if (left.length > 0) wrong.push(`after the retry not as it should be: ${left.join("; ")}`);
  return wrong;
}

const counts: Record<string, number> = {};

/** All of them, or, when few are to be tried, as many spread evenly over the calls. */
function some<T>(cases: readonly T[]): readonly T[] {
  const step = cases.length / drawn(cases.length, 1);
  return cases.filter((_, at) => at === 0 || Math.floor(at / step) > Math.floor((at - 1) / step));
}

test.each(Object.keys(LAYOUTS))(
  "no fault loses, doubles or misplaces anything in a workbook %s",
  async (name) => {
    const { make, matters } = LAYOUTS[name] as Layout;
    const layout = make();
    const found: string[] = [];
    let count = 0;
    for (const sample of ALL_SAMPLES.filter(({ request }) => matters?.includes(request.ask) ?? true)) {
      const clean = await cleanRun(layout, sample);
      const cases: [Fault | WholeFault, number][] = WHOLE_FAULTS.map((fault) => [fault, 0]);
      for (let at = 1; at <= clean.calls; at++) {
        for (const fault of Object.keys(FAULTS) as Fault[]) cases.push([fault, at]);
      }
      for (const [fault, at] of some(cases)) {
        count++;
        for (const wrong of await violations(clean, fault, at)) {
          found.push(`${sample.what}, ${fault} at call ${at}: ${wrong}`);
          if (fewDraws) expect(found).toEqual([]);
        }
      }
    }
    counts[name] = count;
    expect(found.slice(0, 20)).toEqual([]);
  },
  120_000,
);

test("the table's size", () => {
  const total = Object.values(counts).reduce((sum, count) => sum + count, 0);
  console.log(
    `Fault table: ${total} cases over ${ALL_SAMPLES.length} actions and ${Object.keys(counts).length} layouts.`,
  );
  expect(total).toBeGreaterThan(drawn(2_000));
});
