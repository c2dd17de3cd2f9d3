/** The one way in for the panel: JSON text in, JSON text out, never a throw. */

import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { panelRequest } from "../../src/host/panel.ts";
import { openTestBook, readyBook } from "../sheet/workbook.ts";

const answerTo = (sent: unknown): { ok: boolean; code?: string; sentence?: string } => {
  const answer = panelRequest(sent);
  expect(typeof answer).toBe("string");
  return JSON.parse(answer) as { ok: boolean; code?: string; sentence?: string };
};

describe("what is no request", () => {
  test.each<[string, unknown]>([
    ["nothing", undefined],
    ["null", null],
    ["a number", 7],
    ["an object", { ask: "load" }],
    ["half a JSON text", '{"ask":"lo'],
    ["an empty text", ""],
    ["an array", "[]"],
    ["JSON null", "null"],
    ["an unknown question", '{"ask":"delete everything"}'],
    ["a question from the prototype", '{"ask":"__proto__"}'],
  ])("%s is answered with a sentence", (_, sent) => {
    openTestBook();
    expect(answerTo(sent)).toEqual({
      ok: false,
      code: "request",
      sentence:
        "The panel asked for something the sheet does not know. Reload the browser page, so that both are the same version.",
    });
  });

  test("of any shape never throws and writes nothing", () => {
    const book = readyBook();
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string(), fc.anything()), (sent) => {
        expect(answerTo(sent).ok).toBe(false);
      }),
    );
    expect(book.calls).toEqual([]);
  });

  test("of a known name with anything in it never throws", () => {
    readyBook();
    const names = fc.constantFrom("log care", "log batch", "log readings", "set name", "use plant list");
    fc.assert(
      fc.property(names, fc.object(), (ask, rest) => {
        const answer = answerTo(JSON.stringify({ ...rest, ask }));
        expect(answer.ok).toBe(false);
        expect(answer.sentence).toMatch(/\S/);
      }),
    );
  });
});

describe("answers", () => {
  test("to loading are one JSON text without dates or gaps", () => {
    readyBook();
    const text = panelRequest('{"ask":"load"}');
    expect(JSON.stringify(JSON.parse(text))).toBe(text);
    expect(text).toMatch(/"today":"2026-03-10"/);
  });

  test("are failures when a service of the host is out of reach", () => {
    readyBook();
    vi.stubGlobal("PropertiesService", {
      getUserProperties: () => {
        throw new Error("Authorization is required to perform that action.");
      },
    });
    expect(answerTo('{"ask":"load"}')).toMatchObject({
      ok: false,
      code: "unexpected",
      sentence: expect.stringContaining("Authorization is required"),
    });
  });

  test("are failures when a thing is thrown that is no error", () => {
    openTestBook({
      onCall: () => {
        throw "gone";
      },
    });
    expect(answerTo('{"ask":"load"}').sentence).toContain("It said: “gone”");
  });
});

test("a name is kept for one person only", () => {
  const book = readyBook();
  book.reply({ ask: "set name", who: "Ana" });
  expect([...book.userProperties.values()]).toEqual(["Ana"]);
  expect(JSON.stringify(book.values("Settings"))).not.toContain("Ana");
});
