/**
 * The tests that a changed line has to make fail; none that needs dist/ or a browser. By MUTATED those of one folder
 * (core) or of these files (test/core/box.test.ts test/core/nnls.test.ts), so that a first run is quick; for what
 * survived it, without MUTATED, all of core, functions, sheet, app, host and the panel.
 */

import { defineConfig } from "vitest/config";

const named = process.env.MUTATED?.trim() ?? "";
const ALL = "test/{core,functions,sheet,app,host,sidebar}/**/*.test.ts";

function included(): string[] {
  if (named === "") return [ALL];
  return named.includes("/") ? named.split(/\s+/) : [`test/${named}/**/*.test.ts`];
}

export default defineConfig({
  test: {
    include: included(),
    exclude: ["test/host/bundle.test.ts", "test/core/*-oracles.test.ts"],
    setupFiles: ["test/seed.ts", "test/mutation/short.ts"],
    env: { FEW_DRAWS: "1" },
    // One worker for all files: the same verdicts (tried on core/elements), in a third of the time.
    isolate: false,
    testTimeout: 60_000,
  },
});
