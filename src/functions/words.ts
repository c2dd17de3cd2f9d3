/** The shape of what is said about a custom function; kept apart from its record, so that no call has to load it. */

import type { Argument, FunctionRecord } from "./record.ts";

/** A date cell in an example, written as an ISO day. */
export interface ExampleDay {
  readonly day: string;
}
export type ExampleCell = number | string | boolean | ExampleDay;
/** One cell, or a range as rows of cells. */
export type ExampleValue = ExampleCell | readonly (readonly ExampleCell[])[];

export interface Example {
  /** The call as a person types it: literals as in `args`, a reference such as A2:A5 where `args` holds a range. */
  readonly formula: string;
  readonly args: readonly ExampleValue[];
  /** What comes out. Numbers are compared within `within` (relative, default 1e-6). */
  readonly gives: ExampleValue;
  readonly within?: number;
  /** Where the expected value comes from. */
  readonly source: string;
}

/** The words of one function whose arguments have these names. */
export interface FunctionWords<Name extends string = string> {
  /** One sentence, starts with a verb. */
  readonly summary: string;
  /** One line for the person typing each argument; an optional one begins with "Optional" and says its default. */
  readonly args: Readonly<Record<Name, string>>;
  /** What comes back, with its unit. */
  readonly result: string;
  /** The tests try them, README and panel print them. */
  readonly examples: readonly Example[];
  readonly sources: readonly string[];
  /** Names of other functions. */
  readonly seeAlso: readonly string[];
}

/** Words for each of these records and each of their arguments: one too few or too many does not compile. */
export type WordsOf<Records extends readonly FunctionRecord[]> = {
  readonly [One in Records[number] as One["name"]]: FunctionWords<One["args"][number]["name"]>;
};

/** One custom function with its words, as stubs, README, panel and tests read it. */
export interface FunctionReference extends Omit<FunctionWords, "args">, Pick<FunctionRecord, "name" | "group"> {
  readonly args: readonly (Argument & { readonly help: string })[];
}
