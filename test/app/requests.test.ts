/** What the panel may send: every field is looked at, and each is refused by its name when it holds something else. */

import { describe, expect, test } from "vitest";
import { readRequest } from "../../src/app/asked.ts";
import type { Ask, RequestFor } from "../../src/app/contract.ts";
import { ALL_SAMPLES, SAMPLES } from "../shared/samples.ts";
import { batch } from "../sheet/workbook.ts";

type Path = readonly (string | number)[];

/** Every place below the top of a value, those of whole lists and objects too. */
function placesIn(value: unknown, path: Path = []): Path[] {
  const here = path.length === 0 ? [] : [path];
  if (typeof value !== "object" || value === null) return here;
  const keys = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [...here, ...keys.flatMap((key) => placesIn((value as Record<string, unknown>)[key], [...path, key]))];
}

/** A copy with something else in one place. */
function withAt(value: unknown, [step, ...rest]: Path, put: unknown): unknown {
  if (step === undefined) return put;
  const inside = withAt((value as Record<string, unknown>)[step], rest, put);
  if (Array.isArray(value)) return value.map((each, at) => (at === step ? inside : each));
  return { ...(value as object), [step]: inside };
}

/** The sentence of a refusal, or null for a request that is taken. */
function refusal(sent: unknown): string | null {
  try {
    readRequest(sent);
    return null;
  } catch (error) {
    expect((error as { code?: unknown }).code).toBe("request");
    return (error as Error).message;
  }
}

const CORRECTED = {
  ask: "log batch",
  who: "Ana",
  batch: batch({ corrects: "batch-0001", measured: { ecMsCm: 1.2, pH: 6 }, state: "planned" }),
} as const;

describe("a request", () => {
  test.each([...ALL_SAMPLES, { what: "correcting a batch", request: CORRECTED }])(
    "for $what is taken as it is",
    ({ request }) => {
      expect(readRequest(request)).toEqual(request);
    },
  );

  test.each([...ALL_SAMPLES, { what: "correcting a batch", request: CORRECTED }])(
    "for $what is refused with something else in any one place",
    ({ request }) => {
      const taken = placesIn(request).filter((path) => refusal(withAt(request, path, { wrong: [] })) === null);
      expect(taken).toEqual([]);
    },
  );
});

const sample = <A extends Ask>(ask: A): RequestFor<A> => SAMPLES[ask][0]?.request as RequestFor<A>;

describe("a choice", () => {
  test.each<[Ask, Path, readonly string[]]>([
    ["log water", ["entry", "disinfectant"], ["", "none", "chlorine", "chloramine"]],
    ["log meter", ["entry", "meter"], ["EC", "pH"]],
    ["log feed", ["entry", "basis"], ["", "w/w", "w/v"]],
    ["log feed", ["entry", "origin"], ["mineral", "organic"]],
    ["save trial", ["trial", "design"], ["Pairs", "Together"]],
    ["save claim", ["claim", "status"], ["heard", "trying", "kept", "dropped"]],
    ["take back", ["log"], ["Care log", "Batch log", "Purchases", "Meter log", "Claims", "Trials"]],
  ])("of %s, %j, is one of its words as they are written", (ask, path, words) => {
    for (const word of words) expect(refusal(withAt(sample(ask), path, word)), word).toBeNull();
    for (const word of ["other", ...words.filter((each) => each !== "").map((each) => `${each} `)]) {
      expect(refusal(withAt(sample(ask), path, word)), word).toContain(`is ${JSON.stringify(word)}: one of `);
    }
    if (!words.includes("")) expect(refusal(withAt(sample(ask), path, ""))).not.toBeNull();
  });
});

test.each([null, undefined, 7, "load", [], {}, { ask: null }, { ask: "" }, { ask: "Load" }, { ask: "constructor" }])(
  "%j asks for nothing that is known",
  (sent) => {
    expect(refusal(sent)).toMatch(/does not know/);
  },
);

describe("an Id and a day", () => {
  const care = sample("log care");

  test.each(["care-001", "0".repeat(64)])("%j is an Id", (id) => {
    expect(refusal(withAt(care, ["entries", 0, "id"], id))).toBeNull();
  });

  test.each(["care-01", "0".repeat(65), "=care-0001", "care-0001 ", "care-0001\n", "Care-0001", "care_0001"])(
    "%j is no Id",
    (id) => {
      expect(refusal(withAt(care, ["entries", 0, "id"], id))).toMatch(/^The id of entry 1 is /);
    },
  );

  test.each(["12026-03-01", "2026-03-01T10:00", "2026-3-1", "1 March 2026", ""])("%j is no day", (day) => {
    expect(refusal(withAt(care, ["entries", 1, "day"], day))).toMatch(/^The day of entry 2 is /);
  });
});

describe("the sentence of a refusal", () => {
  const numbers: readonly [Ask, Path, unknown, string][] = [
    ["log care", ["entries", 1, "amountMl"], -1, "The amount in mL of entry 2 is -1: it must be 0 or more."],
    ["log care", ["entries", 0, "pH"], 14.5, "The pH of entry 1 is 14.5: it must be 14 or less."],
    ["log care", ["entries", 0, "ecMsCm"], "1", 'The EC in mS/cm of entry 1 is "1": a number is needed.'],
    ["log care", ["entries", 0, "plant"], "", 'The plant of entry 1 is "": it must not be blank.'],
    ["log care", ["entries"], [], "The list of entries is []: at least one is needed."],
    ["log batch", ["batch", "litres"], 0, "The number of litres is 0: it must be more than 0."],
    ["log batch", ["batch", "doses"], [], "The list of doses is []: at least one is needed."],
    ["log batch", ["batch", "doses", 1, "perLitre"], -2, "The dose per litre of entry 2 is -2: it must be 0 or more."],
    ["log batch", ["batch", "doses", 0, "perBatch"], -3, "The dose for the batch of entry 1 is -3"],
    ["log batch", ["batch", "reached"], { Xx: 1 }, 'The mg/L reached is {"Xx":1}: there is no Xx.'],
    ["log batch", ["who"], 7, "The name is 7: a string is needed."],
    ["log readings", ["batchId"], "B", 'The batch is "B": it is not written as it should be.'],
    ["log feed", ["entry", "densityGPerMl"], 0, "The density in g/mL is 0: it must be more than 0."],
    ["log feed", ["entry", "percents"], { Gold: 1 }, 'The list of percents is {"Gold":1}: there is no Gold.'],
    ["log feed", ["entry", "percents"], { Gold: 1, Tin: 2 }, "there is no Gold or Tin."],
    ["log care", ["entries", 1], 5, "The list of entries of entry 2 is 5: "],
    ["import rows", ["rows", 1, 2], { wrong: [] }, 'The rows of entry 2 is {"wrong":[]}: nothing of that kind can '],
    ["write sitter page", ["cells", 2, 0], true, "The cells of entry 3 is true: nothing of that kind can stand there."],
    ["log feed", ["entry", "labelText"], 1, "The text of the label is 1"],
    ["log water", ["entry", "numbers"], { Au: 1 }, 'The list of numbers is {"Au":1}: there is no Au.'],
    ["take back", ["takes"], "", 'The row to take back is ""'],
    ["set name", ["who"], undefined, "The name is missing: a string is needed."],
    ["read page", ["from"], 1, "The from is 1: it must be 2 or more."],
  ];

  test.each(numbers)("of %s says what %j is and what it may be", (ask, path, put, said) => {
    const sentence = refusal(withAt(sample(ask), path, put));
    expect(sentence).toContain(said);
    expect(sentence).toMatch(/ Nothing was written\.$/);
  });

  test("counts what is too many and too long, and quotes no more than a line of it", () => {
    const care = sample("log care");
    const many = Array.from({ length: 501 }, () => care.entries[0]);
    expect(refusal({ ...care, entries: many })).toMatch(/^The list of entries is \[.{59}…: at most 500 at a time\. /);
    const long = "n".repeat(2001);
    // The quotation mark that opens the text is the first of the 60 characters.
    expect(refusal(withAt(care, ["entries", 0, "note"], long))).toBe(
      `The note of entry 1 is "${"n".repeat(59)}…: at most 2000 characters. Nothing was written.`,
    );
    // 58 letters between two quotation marks are 60 characters, which are shown whole.
    const name = "M".repeat(58);
    expect(refusal(withAt(care, ["entries", 0, "id"], name))).toContain(`is "${name}": `);
  });
});
