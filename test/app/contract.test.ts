/** What the panel takes for an answer: a reply whose shape is wrong is a mistake of ours and never shown as data. */

import { expect, test } from "vitest";
import { failure, loaded } from "../../src/app/contract.ts";
import { readyBook } from "../sheet/workbook.ts";
import { load } from "./book.ts";

const without = (whole: object, key: string): object =>
  Object.fromEntries(Object.entries(whole).filter(([name]) => name !== key));

test("a day is a whole ISO day", () => {
  const reply = load(readyBook());
  expect(loaded.safeParse({ ...reply, today: "2026-03-10" }).success).toBe(true);
  for (const today of ["2026-03-10T12:00", " 2026-03-10", "on 2026-03-10", "10.3.2026", ""]) {
    expect(loaded.safeParse({ ...reply, today }).success, today).toBe(false);
  }
});

test("what was used before is a feed with an amount in g or mL, and a text with its sentence", () => {
  const reply = load(readyBook());
  const accepts = (usedBefore: unknown): boolean => loaded.safeParse({ ...reply, usedBefore }).success;
  const used = { feed: "Iron", amount: 2.5, unit: "g" };
  const unread = { text: "a pinch", sentence: "It names no unit." };
  expect(accepts({ used: [used, { ...used, unit: "mL" }], unread: [unread] })).toBe(true);
  for (const key of ["feed", "amount", "unit"] as const) {
    expect(accepts({ used: [without(used, key)], unread: [] }), key).toBe(false);
  }
  for (const key of ["text", "sentence"] as const) {
    expect(accepts({ used: [], unread: [without(unread, key)] }), key).toBe(false);
  }
  expect(accepts({ used: [{ ...used, unit: "L" }], unread: [] })).toBe(false);
  expect(accepts({ used: [{ ...used, unit: "" }], unread: [] })).toBe(false);
});

test("a failure has a code and a sentence, and is not ok", () => {
  const whole = { ok: false, code: "no-tab", sentence: "There is no such tab." } as const;
  expect(failure.safeParse(whole).success).toBe(true);
  for (const key of ["ok", "code", "sentence"] as const) {
    expect(failure.safeParse(without(whole, key)).success, key).toBe(false);
  }
  expect(failure.safeParse({ ...whole, ok: true }).success).toBe(false);
});
