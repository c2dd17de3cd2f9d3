/** Columns as data: what each kind holds, and the usual words by which the shared ones are found. */

import { expect, test } from "vitest";
import { CORRECTS, choice, day, id, NOTE, nameOf, number, text, yesNo } from "../../src/sheet/columns.ts";

test("a column has its heading and help, and other words only where there are some", () => {
  expect(text("Note", "Anything.")).toStrictEqual({ heading: "Note", kind: "text", help: "Anything." });
  expect(number(["Pot mL", "Pot"], "How much.", { unit: "mL", aside: true })).toStrictEqual({
    ...{ heading: "Pot mL", aliases: ["Pot"], kind: "number", help: "How much.", unit: "mL", aside: true },
  });
  expect(day("Date", "When.", { format: "0" })).toStrictEqual({
    ...{ heading: "Date", kind: "day", help: "When.", format: "0" },
  });
});

test("what can be picked is named: words, yes or no, the rows of another tab", () => {
  expect(choice("Kind", "Which.", ["a", "b"])).toMatchObject({ kind: "choice", choices: ["a", "b"], help: "Which." });
  expect(yesNo("Wet", "Is it?")).toMatchObject({ kind: "yes-no", choices: ["yes", "no"], help: "Is it?" });
  expect(nameOf("Plants", "Plant", "Who.")).toMatchObject({ kind: "name", refersTo: "Plants", help: "Who." });
  expect(id("Id", "Names it.")).toStrictEqual({ heading: "Id", kind: "id", help: "Names it." });
});

test("a note and what a row corrects are found under other usual words", () => {
  expect(NOTE.aliases).toEqual(expect.arrayContaining(["Notes", "Remark", "Remarks", "Comment"]));
  expect(CORRECTS.aliases).toEqual(["Corrects id"]);
  for (const { help } of [NOTE, CORRECTS]) expect(help).toMatch(/^[A-Z].*\.$/);
});
