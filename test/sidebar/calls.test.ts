/** Every way in which an answer from the sheet can go wrong ends as a sentence, never as a throw or a hang. */

import { describe, expect, test } from "vitest";
import { createAsk, type ScriptRun, SENTENCES } from "../../sidebar/calls.ts";
import { sheet } from "./sheet.ts";
import { fakeHost } from "./world.ts";

const LOAD = { ask: "load" } as const;

describe("an answer", () => {
  test("that fits the contract comes through", async () => {
    const host = fakeHost();
    const answer = createAsk(() => host.run)<"load">(LOAD);
    await host.last().reply(sheet());
    expect(await answer).toEqual({ ok: true, reply: sheet() });
  });

  test("that says no comes through with its sentence", async () => {
    const host = fakeHost();
    const answer = createAsk(() => host.run)<"load">(LOAD);
    await host.last().fail("The sheet is being written to. Try again.");
    expect(await answer).toEqual({ ok: false, code: "test", sentence: "The sheet is being written to. Try again." });
  });

  test("that was lost on the way is a failure, and two accounts are named as the likely cause", async () => {
    const host = fakeHost();
    const answer = createAsk(() => host.run)<"load">(LOAD);
    await host.last().lose();
    expect(await answer).toEqual({ ok: false, code: "no answer", sentence: SENTENCES.noAnswer });
    expect(SENTENCES.noAnswer).toContain("two accounts");
  });

  test.each([
    ["undefined", undefined, SENTENCES.noAnswer],
    ["an empty text", "", SENTENCES.noAnswer],
    ["an object instead of JSON", { ok: true }, SENTENCES.unreadable],
    ["half a text", '{"ok":true,"rep', SENTENCES.unreadable],
    ["JSON of another kind", "17", SENTENCES.unreadable],
    ["JSON null", "null", SENTENCES.unreadable],
    ["a reply of another version", '{"ok":true,"reply":{"today":"soon"}}', SENTENCES.unreadable],
    ["a failure without a sentence", '{"ok":false,"code":"x"}', SENTENCES.unreadable],
  ])("that is %s is a failure", async (_, answer, sentence) => {
    const run: ScriptRun = {
      withSuccessHandler: (heard) => ({
        ...run,
        panelRequest: () => heard(answer),
        withFailureHandler: () => ({ ...run, panelRequest: () => heard(answer) }),
      }),
      withFailureHandler: () => run,
      panelRequest: () => undefined,
    };
    expect(await createAsk(() => run)<"load">(LOAD)).toMatchObject({ ok: false, sentence });
  });

  test.each([
    [new Error("PERMISSION_DENIED"), SENTENCES.notAllowed],
    [new Error("Authorization is required to perform that action."), SENTENCES.notAllowed],
    [new Error("NetworkError: Connection failure due to HTTP 0"), SENTENCES.connection],
    [new Error("Range not found"), "The sheet could not do this. It says: “Range not found”"],
    [new Error(""), SENTENCES.noAnswer],
    [null, SENTENCES.noAnswer],
    ["a bare text", SENTENCES.noAnswer],
  ])("thrown as %s is a failure", async (error, sentence) => {
    const host = fakeHost();
    const answer = createAsk(() => host.run)<"load">(LOAD);
    await host.last().raise(error);
    expect(await answer).toMatchObject({ ok: false, sentence });
  });
});

describe("a request", () => {
  test("outside a sheet is refused at once", async () => {
    expect(await createAsk(() => null)<"load">(LOAD)).toEqual({
      ok: false,
      code: "no sheet",
      sentence: SENTENCES.noSheet,
    });
  });

  test("that the contract does not allow is not sent, and the sentence names the field", async () => {
    const host = fakeHost();
    const answer = await createAsk(() => host.run)<"set name">({ ask: "set name", who: "a".repeat(2001) });
    expect(answer).toEqual({
      ok: false,
      code: "request",
      sentence: "One entry cannot be saved as it is: who. Shorten or correct it.",
    });
    expect(host.calls).toHaveLength(0);
  });

  test("to a host that throws at once is a failure", async () => {
    const run = {
      withSuccessHandler: () => run,
      withFailureHandler: () => run,
      panelRequest: () => {
        throw new Error("connection gone");
      },
    } as unknown as ScriptRun;
    expect(await createAsk(() => run)<"load">(LOAD)).toMatchObject({ ok: false, code: "connection" });
  });
});
