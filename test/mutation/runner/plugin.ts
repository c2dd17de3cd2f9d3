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

/** Of processor time for the tests of one change, the nearest first; what they did not notice counts as not noticed. */
const LONGEST_MS = Number(process.env.LONGEST_MS ?? 1_500);
/** `EVERY_TEST=1`: also those that did not reach the line when it was made once and kept (the schemas of the requests). */
const EVERY_TEST = process.env.EVERY_TEST === "1";
/** For the run that sees which test reaches which line. */
const LONGEST_DRY_MS = 20_000;

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

/** Of the processor, so that a busy machine comes to the same verdicts. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000;
}

function inSandbox(file: string): string {
  return path.relative(process.cwd(), file);
}

function bundled(): Promise<Bundle> {
  process.env.FEW_DRAWS = "1";
  return bundleOf(testFiles(process.env.MUTATED?.trim() ?? ""), SETUP);
}

interface How {
  /** Tests to run; all when absent. */
  readonly wanted?: ReadonlySet<string> | undefined;
  readonly bail?: boolean;
  readonly mostMs: number;
  readonly loading?: () => void;
  readonly loaded?: () => void;
  readonly each?: (id: string) => void;
}

class InProcess implements TestRunner {
  private bundle: Bundle | null = null;
  /** What each test took the first time. */
  private readonly costs = new Map<string, number>();

  capabilities() {
    return { reloadEnvironment: true };
  }

  async dryRun({ files = [] }: DryRunOptions): Promise<DryRunResult> {
    this.bundle = await bundled();
    const on = switches();
    on.activeMutant = undefined;
    const tests = await this.run(this.bundle, this.bundle.near(files.map(inSandbox)), {
      mostMs: LONGEST_DRY_MS,
      // What a file does while it is loaded is no test's own, least of all that of the last one before it.
      loading: () => {
        on.currentTestId = undefined;
      },
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
    const { activeMutant, hitLimit, mutantActivation } = options;
    const testFilter = EVERY_TEST ? undefined : options.testFilter;
    // A worker that starts after a time-out has had no dry run.
    this.bundle ??= await bundled();
    const wanted = testFilter === undefined ? undefined : new Set(testFilter);
    const files = this.bundle
      .near([inSandbox(options.sandboxFileName)])
      .filter((file) => testFilter === undefined || testFilter.some((id) => id.startsWith(`${file}#`)));
    const on = switches();
    on.hitCount = 0;
    on.hitLimit = hitLimit;
    on.activeMutant = undefined;
    try {
      const tests = await this.run(this.bundle, files, {
        wanted,
        bail: true,
        mostMs: LONGEST_MS,
        loading: () => {
          on.activeMutant = mutantActivation === "static" ? activeMutant.id : undefined;
        },
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

  /**
   * File by file, the nearest first, until the time of the processor is used up. With `bail` the first failure ends
   * it; a file that cannot even be loaded is a failure.
   */
  private async run(bundle: Bundle, files: readonly string[], how: How): Promise<TestResult[]> {
    const started = processorMs();
    const results: TestResult[] = [];
    const collection = new Collection();
    const fail = (id: string, thrown: unknown): TestResult[] => {
      results.push({ id, name: id, timeSpentMs: 0, status: TestStatus.Failed, failureMessage: said(thrown) });
      return results;
    };
    let load: (file: string) => void;
    how.loading?.();
    try {
      load = bundle.open(collection.api);
    } catch (thrown) {
      return fail("setup", thrown);
    }
    for (const file of files) {
      how.loading?.();
      collection.begin(file);
      try {
        load(file);
      } catch (thrown) {
        return fail(file, thrown);
      }
      how.loaded?.();
      for (const test of collection.tests.splice(0)) {
        if (how.wanted?.has(test.id) === false) continue;
        if (processorMs() - started + (this.costs.get(test.id) ?? 0) > how.mostMs) continue;
        const result = await this.runOne(collection, test, how.each);
        results.push(result);
        if (how.bail && result.status === TestStatus.Failed) return results;
      }
      collection.end();
      if (processorMs() - started > how.mostMs) break;
    }
    return results;
  }

  private async runOne(collection: Collection, test: Collected, each?: (id: string) => void): Promise<TestResult> {
    each?.(test.id);
    const started = processorMs();
    const thrown = await collection.run(test);
    const timeSpentMs = processorMs() - started;
    if (!this.costs.has(test.id)) this.costs.set(test.id, timeSpentMs);
    const named = { id: test.id, name: test.name, fileName: test.file, timeSpentMs };
    if (thrown === null) return { ...named, status: TestStatus.Success };
    if (thrown === undefined) return { ...named, status: TestStatus.Skipped };
    return { ...named, status: TestStatus.Failed, failureMessage: said(thrown) };
  }
}

export const strykerPlugins = [
  declareFactoryPlugin(
    PluginKind.TestRunner,
    "in-process",
    Object.assign(() => new InProcess(), { inject: [] as const }),
  ),
];
