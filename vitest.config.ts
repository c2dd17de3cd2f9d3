import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts", "test/**/*.test.tsx"],
    globalSetup: ["test/setup.ts"],
    setupFiles: ["test/seed.ts"],
    testTimeout: 20_000,
  },
});
