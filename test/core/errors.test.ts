import { expect, it } from "vitest";
import { BadInput, isBadInput, NoConvergence } from "../../src/core/errors.ts";

it("bad input is known by its name, also from another realm, and nothing else passes for it", () => {
  expect(isBadInput(new BadInput("no-tool", "Nothing measures it."))).toBe(true);
  expect(isBadInput({ name: "BadInput" })).toBe(true);
  for (const other of [
    new Error("BadInput"),
    new NoConvergence("It does not settle.", 1),
    { name: 1 },
    "BadInput",
    null,
  ])
    expect(isBadInput(other)).toBe(false);
});

it("arithmetic that does not settle has a name of its own and says how far it was", () => {
  const { name, residual } = new NoConvergence("It does not settle.", 0.25);
  expect([name, residual]).toEqual(["NoConvergence", 0.25]);
});
