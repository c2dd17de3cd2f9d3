/** 5,000 random variants of every request by night, the first 1,500 of them by day: an answer each time, a sentence when it is no, and no write from a read. */

import { describe, expect, test } from "vitest";
import type { Ask } from "../../src/app/contract.ts";
import type { Random } from "../../src/build/sample-random.ts";
import { panelRequest } from "../../src/host/panel.ts";
import { dateCell, openTestBook } from "../sheet/workbook.ts";
import { copyGrid, differing, stateOf } from "./copy.ts";
import { byNight, drawsFor } from "./draws.ts";
import { LAYOUTS, type Layout } from "./layouts.ts";
import { READS, SAMPLES } from "./samples.ts";

const REQUESTS = byNight ? 5_000 : 1_500;
const MOST_MS = 3_000;

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

const LEAVES: readonly Json[] = [
  ...[
    "",
    " ",
    "=1+1",
    "'",
    "Monstera",
    "care-0001",
    "batch-0001",
    "2026-02-30",
    "2026-03-01",
    "0000-00-00",
    "__proto__",
  ],
  ...["load", "Care log", "Settings", "My plants", "Name", "a".repeat(3_000), "🌱", "\u0000", "-", "sample-care-01"],
  ...[0, -1, 1e308, 0.1, 7, 1e21, 5e-324, true, false, null],
];

function junk(random: Random, depth = 0): Json {
  if (depth > 2 || random.chance(0.6)) return random.pick(LEAVES);
  const size = random.whole(0, 3);
  if (random.chance(0.5)) return Array.from({ length: size }, () => junk(random, depth + 1));
  return Object.fromEntries(Array.from({ length: size }, () => [String(random.pick(LEAVES)), junk(random, depth + 1)]));
}

/** The same value with one place in it replaced, taken away, doubled or given a name that is not known. */
function spoilt(value: Json, random: Random): Json {
  if (typeof value !== "object" || value === null || random.chance(0.15)) return junk(random);
  if (Array.isArray(value)) {
    const at = random.whole(0, value.length - 1);
    if (value.length > 0 && random.chance(0.6)) {
      return value.map((each, index) => (index === at ? spoilt(each, random) : each));
    }
    return random.chance(0.5) ? [...value, ...value] : value.slice(1);
  }
  const keys = Object.keys(value);
  const key = random.pick(keys.length > 1 ? keys.filter((each) => each !== "ask") : ["ask"]);
  const copy = { ...value };
  const kind = random.next();
  if (kind < 0.7) copy[key] = spoilt(copy[key] ?? null, random);
  else if (kind < 0.85) delete copy[key];
  else copy[String(random.pick(LEAVES))] = junk(random);
  return copy;
}

describe.each(Object.keys(SAMPLES) as Ask[])("%s", (ask) => {
  test("is answered whatever is in it", () => {
    const random = drawsFor(`request ${ask}`);
    const layout = (LAYOUTS["as set up"] as Layout).make();
    // With today's date in Settings there is nothing left that a read could have to write.
    layout.tab("Settings").write(2, 2, [[dateCell("2026-03-10")]]);
    const samples = SAMPLES[ask].map(({ request }) => JSON.parse(JSON.stringify(request)) as Json);
    let book = openTestBook({ grid: copyGrid(layout) });
    let before = stateOf(book.grid);
    const outcomes = { yes: 0, no: 0 };
    for (let count = 0; count < REQUESTS; count++) {
      const sent = spoilt(random.pick(samples), random);
      const text = random.chance(0.02) ? JSON.stringify(sent).slice(0, -1) : JSON.stringify(sent);
      const started = performance.now();
      const answer = JSON.parse(panelRequest(text)) as { ok: boolean; code?: string; sentence?: string };
      const what = `request ${count}, ${text.slice(0, 300)}`;
      if (performance.now() - started > MOST_MS) expect.unreachable(`${what}: too slow`);
      outcomes[answer.ok ? "yes" : "no"]++;
      if (!answer.ok && !/^\S[\s\S]*[.!?”]$/.test(answer.sentence ?? "")) {
        expect.unreachable(`${what}: no sentence, but ${answer.sentence}`);
      }
      if (answer.code === "unexpected") expect.unreachable(`${what}: ${answer.sentence}`);
      const wrote = book.calls.some((name) => /set|insert|add|delete|clear|protect/i.test(name));
      book.calls.length = 0;
      if (!wrote) continue;
      const changed = differing(before, stateOf(book.grid));
      const asked = (sent as { ask?: string } | null)?.ask;
      if (READS.has(asked as Ask)) expect.unreachable(`${what}: a read wrote ${changed.join("; ")}`);
      if (!answer.ok && changed.length > 0) expect.unreachable(`${what}: refused, and wrote ${changed.join("; ")}`);
      book = openTestBook({ grid: copyGrid(layout) });
      before = stateOf(book.grid);
    }
    expect(outcomes.no).toBeGreaterThan(0);
    // A request without anything in it can only be spoilt by what is asked.
    if (Object.keys(samples[0] ?? {}).length > 1) expect(outcomes.yes).toBeGreaterThan(0);
  }, 60_000);
});
