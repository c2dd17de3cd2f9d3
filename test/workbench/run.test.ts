/** The way between panel and script: what is lost, what fails, and who may be called. */

import { expect, test } from "vitest";
import { makeRunner, type Runner } from "../../sample-sheet/workbench/standin/run.ts";

const script: Record<string, (...args: unknown[]) => unknown> = {
  echo: (value) => value,
  fails: () => {
    throw Object.assign(new TypeError("Pot is empty"), { code: "empty" });
  },
  secret_: () => "no",
};

function ask(name: string, ...args: unknown[]): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const runner: Runner = makeRunner({
      call: (called, sent) => script[called]?.(...sent),
      isPublic: (called) => called in script,
      delayMs: 0,
      later: (act) => act(),
    })
      .withSuccessHandler(resolve)
      .withFailureHandler(reject);
    (runner[name] as unknown as (...given: unknown[]) => void)(...args);
  });
}

test.each([
  ["a text", "3/4"],
  ["a number", 1.5],
  ["a list", [1, "a", null, true]],
  ["an object", { a: { b: [1] } }],
])("%s arrives as it was sent", async (_what, value) => {
  expect(await ask("echo", value)).toEqual(value);
});

test.each([
  ["a Date", () => new Date(0)],
  ["a Date deep inside", () => ({ rows: [[new Date(0)]] })],
  ["NaN", () => Number.NaN],
  ["Infinity in a list", () => [1, Number.POSITIVE_INFINITY]],
  ["undefined in an object", () => ({ a: 1, b: undefined })],
  ["nothing", () => undefined],
])("%s in the answer makes the whole answer null, without an error", async (_what, make) => {
  script.made = make;
  expect(await ask("made")).toBe(null);
});

test("a Date as an argument throws at once, in the panel's own code", async () => {
  await expect(ask("echo", new Date(0))).rejects.toThrow("illegal value in property: 0");
});

test("only the message of an error comes through", async () => {
  const error = await ask("fails").catch((caught: unknown) => caught);
  expect(error).toMatchObject({ name: "ScriptError", message: "Pot is empty" });
  expect(error).not.toHaveProperty("code");
});

test.each(["secret_", "nothere"])("%s cannot be called from a panel", async (name) => {
  await expect(ask(name)).rejects.toThrow(`Script function not found: ${name}`);
});

test("the answer comes a round trip later, not at once", () => {
  const waits: number[] = [];
  const runner = makeRunner({
    call: () => 1,
    isPublic: () => true,
    delayMs: 400,
    later: (_act, delayMs) => void waits.push(delayMs),
  });
  (runner.echo as unknown as () => void)();
  expect(waits).toEqual([400]);
});
