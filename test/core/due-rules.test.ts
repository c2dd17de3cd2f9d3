/** Rules of what is due as the Settings tab holds them. */

import { expect, it } from "vitest";
import { DUE_SETTINGS, dueRules, dueSetting } from "../../src/core/due-rules.ts";

it("stand under the names that sheets already hold, each with its unit and what it says", () => {
  expect(DUE_SETTINGS.map(({ setting, unit, value, max }) => [setting, unit, value, max])).toEqual([
    ["Top up days", "days", 14, 3650],
    ["Flush days", "days", 30, 3650],
    ["Change days", "days", 90, 3650],
    ["EC ceiling", "mS/cm", 2, 20],
    ["Root rise %", "%", 30, 1000],
    ["Look days", "days", 7, 3650],
    ["Recovery days", "days", 90, 3650],
  ]);
  for (const { note } of DUE_SETTINGS) expect(note).toMatch(/^[A-Z].{20,}\.$/);
});

it("are found by name, case and spaces ignored", () => {
  expect(dueSetting(" ec  CEILING")?.rule).toBe("ecCeilingMsCm");
  expect(dueSetting("Root rise%")?.rule).toBe("riseShare");
  expect(dueSetting("Tea time")).toBeNull();
});

it("set every rule there is", () => {
  expect(dueRules()).toEqual({
    ...{ topUpDays: 14, flushDays: 30, changeDays: 90, ecCeilingMsCm: 2, riseShare: 0.3, lookDays: 7 },
    recoveryDays: 90,
  });
});

it("percent become shares, and off is never", () => {
  expect(dueRules(({ rule }) => (rule === "riseShare" ? 45 : rule === "lookDays" ? "off" : null))).toMatchObject({
    riseShare: 0.45,
    lookDays: null,
    topUpDays: 14,
  });
});
