/** Months by name. */

import { expect, it } from "vitest";
import { monthNamed } from "../../src/core/months.ts";

it("each month by its first three letters, by more of them, by its whole name", () => {
  const names = "January February March April May June July August September October November December".split(" ");
  names.forEach((name, at) => {
    for (let letters = 3; letters <= name.length; letters++) expect(monthNamed(name.slice(0, letters))).toBe(at + 1);
    expect(monthNamed(name.toUpperCase())).toBe(at + 1);
  });
});

it.each(["", "M", "Ma", "Ap", "Mayo", "Aprilia", "pril", "13"])("%j is none", (word) =>
  expect(monthNamed(word)).toBeNull(),
);
