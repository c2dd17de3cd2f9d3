/** Sentences of a request: each once, eight of a tab, and how many more there are. */

import { expect, test } from "vitest";
import { gatherSentences } from "../../src/sheet/sentences.ts";

test("each is said once for a tab, in the order in which they came up, tab by tab", () => {
  const say = gatherSentences();
  for (const [about, sentence] of [
    ["Feeds", "one"],
    ["Waters", "two"],
    ["Feeds", "three"],
    ["Feeds", "one"],
    ["", "four"],
    ["Waters", "one"],
  ] as const) {
    say.add(about, sentence);
  }
  expect(say.all()).toEqual(["one", "three", "two", "one", "four"]);
  expect(gatherSentences().all()).toEqual([]);
});

test("of more than eight of a tab the first eight are said, and the rest is counted", () => {
  const say = gatherSentences();
  for (let row = 1; row <= 8; row++) say.add("Feeds", `Row ${row}.`);
  expect(say.all()).toHaveLength(8);
  for (let row = 9; row <= 11; row++) say.add("Feeds", `Row ${row}.`);
  say.add("Feeds", "Row 3.");
  say.add("Waters", "Row 1.");
  const all = say.all();
  expect(all.slice(0, 8)).toEqual(Array.from({ length: 8 }, (_, at) => `Row ${at + 1}.`));
  expect(all[8]).toMatch(/^Feeds has 3 more/);
  expect(all.slice(9)).toEqual(["Row 1."]);
});
