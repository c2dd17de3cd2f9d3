/** Every request is answered with what the contract promises, and a failure says whether anything was written. */

import { describe, expect, test } from "vitest";
import { replies } from "../../src/app/contract.ts";
import { handle } from "../../src/app/handlers.ts";
import { ALL_SAMPLES, READS, sampleTabs } from "../shared/samples.ts";
import { readyBook } from "../sheet/workbook.ts";

describe.each(ALL_SAMPLES)("$what", ({ request }) => {
  test("is answered with a reply of its own kind", () => {
    const reply: unknown = readyBook({ tabs: sampleTabs() }).reply(request);
    expect(replies[request.ask].parse(reply)).toEqual(reply);
  });

  test("says that nothing was written when the first call fails, and says nothing of it where nothing would be", () => {
    let down = false;
    const fail = () => {
      if (down) throw new Error("Service error");
    };
    const book = readyBook({ tabs: sampleTabs(), onCall: fail, onService: fail });
    const answer = (() => {
      const workbook = book.workbook();
      const me = {
        name: "Ana",
        begun: () => false,
        saveName: () => fail(),
      };
      down = true;
      return handle(request, workbook, me);
    })();
    const said = READS.has(request.ask) ? "" : " Nothing was written.";
    expect(answer).toEqual({
      ok: false,
      code: "unexpected",
      sentence: `The spreadsheet did not let this be done. It said: “Service error”${said} Try again; if it keeps happening, reload the page.`,
    });
  });
});

test("a name that was sent and whose fate is unknown may have been kept", () => {
  const me = {
    name: "",
    begun: () => true,
    saveName: () => {
      throw new Error("Service error");
    },
  };
  const answer = handle({ ask: "set name", who: "Ana" }, readyBook().workbook(), me);
  expect(answer).toMatchObject({ ok: false, sentence: expect.stringContaining("Trying again is safe") });
});

test("what fails before the request is understood says nothing of writing", () => {
  const sent = {
    get ask(): string {
      throw new Error("Gone");
    },
  };
  const answer = handle(sent, readyBook().workbook(), { name: "", begun: () => false, saveName: () => undefined });
  expect(answer).toMatchObject({ ok: false, sentence: expect.not.stringContaining("written") });
});

test("a blank name is refused with a code of its own", () => {
  expect(readyBook().refusal({ ask: "set name", who: "  " }).code).toBe("no-name");
});

test("a chart, boards and what is on hand are told of in a sentence", () => {
  const book = readyBook({ tabs: sampleTabs() });
  for (const ask of ["draw chart", "make boards", "show on hand"] as const) {
    expect(book.reply({ ask }).sentence, ask).toMatch(/^[A-Z“].*\.$/s);
  }
});
