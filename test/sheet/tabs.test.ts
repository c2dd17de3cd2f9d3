/** Tabs and their columns by name; a name that is not there is a mistake of ours, and says which. */

import { expect, test } from "vitest";
import { TAB_NAMES, type TabName } from "../../src/sheet/spec.ts";
import { columnSpec, tabSpec } from "../../src/sheet/tabs.ts";

test("every tab and every column is found by its name", () => {
  for (const name of TAB_NAMES) {
    const spec = tabSpec(name);
    expect(spec.name).toBe(name);
    for (const column of spec.columns) expect(columnSpec(spec, column.heading)).toBe(column);
  }
});

test("another name is refused with it", () => {
  expect(() => tabSpec("Cellar" as TabName)).toThrow("Cellar");
  expect(() => columnSpec(tabSpec("Feeds"), "Colour")).toThrow(/Feeds .*Colour/);
});
