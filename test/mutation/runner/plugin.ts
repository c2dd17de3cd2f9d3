/**
 * A test runner for Stryker in one process. Starting vitest anew for each change takes a third of a second and more;
 * evaluating the same test files again takes some milliseconds, so that 13,000 changes end in an hour or two.
 */

import path from "node:path";
import { INSTRUMENTER_CONSTANTS, type MutantCoverage } from "@stryker-mutator/api/core";
import { declareFactoryPlugin, PluginKind } from "@stryker-mutator/api/plugin";
import {
  type DryRunOptions,
  type DryRunResult,
  DryRunStatus,
  determineHitLimitReached,
  type MutantRunOptions,
  type MutantRunResult,
  type TestResult,
  type TestRunner,
  TestStatus,
  toMutantRunResult,
} from "@stryker-mutator/api/test-runner";
import { testFiles } from "../test-files.ts";
import { type Bundle, bundleOf } from "./bundle.ts";
import { type Collected, Collection } from "./shim.ts";

const SETUP = ["test/seed.ts", "test/mutation/short.ts"];

/** What the changed code reads and writes. */
interface Switches {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: MutantCoverage;
}

function switches(): Switches {
  const all = globalThis as unknown as Record<string, Switches | undefined>;
  const known = all[INSTRUMENTER_CONSTANTS.NAMESPACE] ?? {};
  all[INSTRUMENTER_CONSTANTS.NAMESPACE] = known;
  return known;
}

function said(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}

class InProcess implements TestRunner {
  private bundle: Bundle | null = null;

  capabilities() {
    return { reloadEnvironment: true };
  }

  async dryRun({ files = [] }: DryRunOptions): Promise<DryRunResult> {
    const changed = files.map((file) => path.relative(process.cwd(), file));
    this.bundle = await this.bundled(changed);
    const on = switches();
    on.activeMutant = undefined;
    const tests = await this.run(this.bundle, this.bundle.files, {
      each: (id) => {
        on.currentTestId = id;
      },
    });
    on.currentTestId = undefined;
    return {
      status: DryRunStatus.Complete,
      tests,
      ...(on.mutantCoverage === undefined ? {} : { mutantCoverage: on.mutantCoverage }),
    };
  }

  async mutantRun(options: MutantRunOptions): Promise<MutantRunResult> {
    const { activeMutant, hitLimit, mutantActivation, testFilter } = options;
    // A worker that starts after a time-out has had no dry run.
    this.bundle ??= await this.bundled([path.relative(process.cwd(), options.sandboxFileName)]);
    const wanted = testFilter === undefined ? undefined : new Set(testFilter);
    const files = this.bundle.files.filter(
      (file) => testFilter === undefined || testFilter.some((id) => id.startsWith(`${file}#`)),
    );
    const on = switches();
    on.hitCount = 0;
    on.hitLimit = hitLimit;
    on.activeMutant = mutantActivation === "static" ? activeMutant.id : undefined;
    try {
      const tests = await this.run(this.bundle, files, {
        wanted,
        bail: true,
        loaded: () => {
          on.activeMutant = activeMutant.id;
        },
      });
      return toMutantRunResult(
        determineHitLimitReached(on.hitCount, hitLimit) ?? { status: DryRunStatus.Complete, tests },
      );
    } finally {
      on.activeMutant = undefined;
    }
  }

  private bundled(changed: readonly string[]): Promise<Bundle> {
    process.env.FEW_DRAWS = "1";
    return bundleOf(testFiles(process.env.MUTATED?.trim() ?? ""), SETUP, changed);
  }

  /** File by file. With `bail` the first failure ends it; a file that cannot even be loaded is a failure. */
  private async run(
    bundle: Bundle,
    files: readonly string[],
    how: {
      readonly wanted?: ReadonlySet<string> | undefined;
      readonly bail?: boolean;
      readonly loaded?: () => void;
      readonly each?: (id: string) => void;
    },
  ): Promise<TestResult[]> {
    const collection = new Collection();
    const results: TestResult[] = [];
    try {
      bundle.load(files, collection.api, (file) => collection.begin(file));
    } catch (thrown) {
      return [{ id: "load", name: "load", timeSpentMs: 0, status: TestStatus.Failed, failureMessage: said(thrown) }];
    }
    how.loaded?.();
    let last: Collected | undefined;
    for (const test of collection.tests) {
      if (how.wanted?.has(test.id) === false) continue;
      how.each?.(test.id);
      const started = performance.now();
      const thrown = await collection.run(test, last?.file ?? test.file);
      last = test;
      const named = { id: test.id, name: test.name, fileName: test.file, timeSpentMs: performance.now() - started };
      if (thrown === null) results.push({ ...named, status: TestStatus.Success });
      else if (thrown === undefined) results.push({ ...named, status: TestStatus.Skipped });
      else {
        results.push({ ...named, status: TestStatus.Failed, failureMessage: said(thrown) });
        if (how.bail) break;
      }
    }
    collection.end();
    return results;
  }
}

export const strykerPlugins = [
  declareFactoryPlugin(
    PluginKind.TestRunner,
    "in-process",
    Object.assign(() => new InProcess(), { inject: [] as const }),
  ),
];
