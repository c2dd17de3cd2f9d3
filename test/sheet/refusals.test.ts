/** Whatever is thrown becomes a code and a sentence, which says whether something may have been written. */

import { expect, test } from "vitest";
import { BadInput } from "../../src/core/errors.ts";
import { asFailure, busy } from "../../src/sheet/refusals.ts";

test("a refusal of ours stays what it is, whatever had begun", () => {
  const refused = new BadInput("no-name", "Type a name.");
  for (const begun of [undefined, true, false]) {
    expect(asFailure(refused, begun)).toEqual({ code: "no-name", sentence: "Type a name." });
  }
  expect(asFailure(busy(30))).toMatchObject({ code: "busy", sentence: expect.stringContaining("for 30 seconds") });
});

test.each<[string, unknown, string]>([
  ["an error", new Error("Service failed."), "Service failed."],
  ["an error without words", Object.assign(new Error(""), { name: "Timeout" }), "Timeout"],
  ["a text", "no more calls", "no more calls"],
  ["an object whose message is no text", { message: 7, toString: () => "quota" }, "quota"],
  ["nothing", undefined, "undefined"],
  ["null", null, "null"],
])("%s of the spreadsheet is quoted", (_, thrown, words) => {
  for (const begun of [undefined, true, false]) {
    const { code, sentence } = asFailure(thrown, begun);
    expect(code).toBe("unexpected");
    expect(sentence).toContain(`It said: “${words}”`);
  }
});

test("what had begun to be written may be there; what had not is not; a reading says neither", () => {
  const of = (begun?: boolean) => asFailure(new Error("x"), begun).sentence;
  const [may, nothing] = [/nothing is written twice/, /Nothing was written\./];
  expect([may.test(of(true)), nothing.test(of(true))]).toEqual([true, false]);
  expect([may.test(of(false)), nothing.test(of(false))]).toEqual([false, true]);
  expect([may.test(of()), nothing.test(of())]).toEqual([false, false]);
  expect(of()).toMatch(/“x” Try again; if it keeps happening, reload the page\.$/);
});
