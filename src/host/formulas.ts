/** Where a formula's stub comes in: the runner, wired to this host's dates. */

/** Answers the custom function `name`; `args` is the stub's own arguments object. */
export function call(name: string, args: ArrayLike<unknown>): unknown {
  throw new Error(`${name} is not among the functions (${args.length} arguments).`);
}
