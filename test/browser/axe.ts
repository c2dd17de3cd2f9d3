/** What axe-core objects to in a page or a frame: WCAG 2.0 to 2.2 A and AA, and its best practices. */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Frame, Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Rule and element of each; none is a pass. */
export async function objections(place: Page | Frame): Promise<string[]> {
  await place.evaluate(AXE);
  return place.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary ?? ""}`),
    );
  });
}
