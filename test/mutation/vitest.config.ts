/** The tests that a changed line of core, functions, sheet or app has to make fail; none that needs dist/ or a browser. */

import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/{core,functions,sheet,app,host}/**/*.test.ts"],
    exclude: ["test/host/bundle.test.ts", "test/core/*-oracles.test.ts"],
    setupFiles: ["test/seed.ts"],
    // Timings mean nothing beside a second run on two cores.
    testNamePattern: /^(?!.*(millisecond| ms\b|takes less|in time)).*$/,
    testTimeout: 60_000,
  },
});
