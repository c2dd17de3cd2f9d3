/**
 * The tests that a changed line has to make fail; none that needs dist/ or a browser. At first those of the line's own
 * folder (MUTATED=core), then, for what survived them, all of core, functions, sheet, app and host.
 */

import { defineConfig } from "vitest/config";

const own = process.env.MUTATED;

export default defineConfig({
  test: {
    include: own ? [`test/${own}/**/*.test.ts`] : ["test/{core,functions,sheet,app,host}/**/*.test.ts"],
    exclude: ["test/host/bundle.test.ts", "test/core/*-oracles.test.ts"],
    setupFiles: ["test/seed.ts", "test/mutation/short.ts"],
    env: { FEW_DRAWS: "1" },
    // One worker for all files: the same verdicts (tried on core/elements), in a third of the time.
    isolate: false,
    testTimeout: 60_000,
  },
});
