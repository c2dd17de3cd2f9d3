/** Tabs by name; a name that is not there is a mistake of ours, and says which. */

import { expect, test } from "vitest";
import { TAB_NAMES, type TabName } from "../../src/sheet/spec.ts";
import { tabSpec } from "../../src/sheet/tabs.ts";

test("every tab is found by its name", () => {
  for (const name of TAB_NAMES) expect(tabSpec(name).name).toBe(name);
});

test("another name is refused with it", () => {
  expect(() => tabSpec("Cellar" as TabName)).toThrow("Cellar");
});
