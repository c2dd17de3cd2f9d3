/**
 * What the tests import from "vitest", for runs in one process: collecting, hooks, `each`, the same matchers
 * (@vitest/expect), and a clock that stands still. Everything else of vitest is absent and fails loudly.
 */

import {
  customMatchers,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from "@vitest/expect";
import * as chai from "chai";

type Body = (...given: unknown[]) => unknown;

export interface Suite {
  readonly name: string;
  readonly parent: Suite | null;
  readonly beforeAll: Body[];
  readonly beforeEach: Body[];
  readonly afterEach: Body[];
  readonly afterAll: Body[];
}
export interface Collected {
  readonly id: string;
  readonly name: string;
  readonly file: string;
  readonly suite: Suite;
  readonly body: () => unknown;
}

const SKIPPED = Symbol("skipped");

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);
const { expect } = chai;
Object.defineProperty(globalThis, GLOBAL_EXPECT, { value: expect, writable: true, configurable: true });
setState({ assertionCalls: 0, isExpectingAssertions: false, expectedAssertionsNumber: null } as never, expect as never);
(expect as unknown as { extend(to: unknown, matchers: unknown): void }).extend(expect, customMatchers);

function suiteOf(name: string, parent: Suite | null): Suite {
  return { name, parent, beforeAll: [], beforeEach: [], afterEach: [], afterAll: [] };
}

/** The hooks of a suite and those around it, the outermost first. */
function chain(suite: Suite | null, pick: (one: Suite) => readonly Body[]): Body[] {
  return suite === null ? [] : [...chain(suite.parent, pick), ...pick(suite)];
}

/** A test may be given options or a time before or after its body; the body is what can be called. */
function bodyOf(rest: readonly unknown[]): Body {
  return rest.find((one) => typeof one === "function") as Body;
}

const RealDate = Date;

/** Date with a clock that stands still, and globals that can be put back. */
class Stand {
  private readonly globals = new Map<string, unknown>();

  isFakeTimers = (): boolean => globalThis.Date !== RealDate;
  useFakeTimers = ({ now }: { now: number }): void => this.setSystemTime(now);
  setSystemTime = (now: number): void => {
    const fixed = class extends RealDate {
      constructor(...given: [] | ConstructorParameters<DateConstructor>) {
        super(...((given.length === 0 ? [now] : given) as [number]));
      }
      static override now(): number {
        return now;
      }
    };
    globalThis.Date = fixed as DateConstructor;
  };
  stubGlobal = (name: string, value: unknown): void => {
    const all = globalThis as unknown as Record<string, unknown>;
    if (!this.globals.has(name)) this.globals.set(name, all[name]);
    all[name] = value;
  };
  putBack(): void {
    globalThis.Date = RealDate;
    for (const [name, value] of this.globals) (globalThis as unknown as Record<string, unknown>)[name] = value;
    this.globals.clear();
  }
}

/** One evaluation of the test files: what they collected, and how to run it. */
export class Collection {
  readonly tests: Collected[] = [];
  private readonly root = suiteOf("", null);
  private readonly names = new Map<string, number>();
  private readonly begun = new Set<Suite>();
  private readonly stand = new Stand();
  private suite = this.root;
  private file = "";

  /** From here on tests are collected for this file. */
  begin(file: string): void {
    this.file = file;
    this.suite = suiteOf(file, this.root);
  }

  /** In place of the module "vitest". */
  readonly api = this.makeApi();

  private makeApi() {
    const describe = (name: string, body: Body): void => {
      const outer = this.suite;
      this.suite = suiteOf(name, outer);
      body();
      this.suite = outer;
    };
    const test = (name: string, ...rest: unknown[]): void =>
      this.collect(name, () => bodyOf(rest)(this.contextOf(name)));
    const eachOf =
      (make: (name: string, body: Body) => void) =>
      (rows: readonly unknown[]) =>
      (name: string, ...rest: unknown[]) => {
        for (const [at, row] of rows.entries()) {
          make(`${name} [${at}]`, () => bodyOf(rest)(...(Array.isArray(row) ? row : [row])));
        }
      };
    const withEach = (make: (name: string, body: Body) => void) => Object.assign(make, { each: eachOf(make) });
    const hook = (kind: "beforeAll" | "beforeEach" | "afterEach" | "afterAll") => (body: Body) => {
      (this.file === "" ? this.root : this.suite)[kind].push(body);
    };
    return {
      describe: withEach(describe),
      test: withEach(test),
      it: withEach(test),
      expect,
      vi: this.stand,
      beforeAll: hook("beforeAll"),
      beforeEach: hook("beforeEach"),
      afterEach: hook("afterEach"),
      afterAll: hook("afterAll"),
    };
  }

  private contextOf(name: string): unknown {
    return {
      task: { name },
      skip: () => {
        throw SKIPPED;
      },
    };
  }

  private collect(name: string, body: () => unknown): void {
    let path = name;
    for (let suite = this.suite; suite.parent?.parent; suite = suite.parent) path = `${suite.name} ${path}`;
    const id = `${this.file}#${path}`;
    const before = this.names.get(id) ?? 0;
    this.names.set(id, before + 1);
    const own = before === 0 ? id : `${id} (${before + 1})`;
    this.tests.push({ id: own, name, file: this.file, suite: this.suite, body });
  }

  /** Runs one test with its hooks; null when it passed, undefined when it was skipped, else what was thrown. */
  async run(test: Collected): Promise<unknown> {
    try {
      for (let suite: Suite | null = test.suite; suite !== null; suite = suite.parent) {
        if (this.begun.has(suite)) continue;
        this.begun.add(suite);
        for (const body of suite.beforeAll) await body();
      }
      for (const body of chain(test.suite, (one) => one.beforeEach)) await body(this.contextOf(test.name));
      await test.body();
      for (const body of chain(test.suite, (one) => one.afterEach)) await body(this.contextOf(test.name));
      return null;
    } catch (thrown) {
      if (thrown === SKIPPED) return undefined;
      return thrown ?? new Error("Thrown without a value.");
    }
  }

  /** Puts back the clock and the globals, at the end of a file. */
  end(): void {
    this.stand.putBack();
  }
}
