/** The one kind of error for bad input, and the one for arithmetic that does not settle. */

/**
 * What a person typed cannot be used. `sentence` is shown to them as it is: it quotes the value and
 * says what would be accepted. `code` is for tests and for choosing what to do, never shown.
 */
export class BadInput extends Error {
  readonly code: string;

  constructor(code: string, sentence: string) {
    super(sentence);
    this.name = "BadInput";
    this.code = code;
  }
}

/** An iteration that stopped before its tolerance; `residual` says how far it was, in the unit the sentence names. */
export class NoConvergence extends Error {
  readonly residual: number;

  constructor(sentence: string, residual: number) {
    super(sentence);
    this.name = "NoConvergence";
    this.residual = residual;
  }
}

/** True for a BadInput, also one from another realm, where instanceof fails. */
export function isBadInput(error: unknown): error is BadInput {
  return (error as { name?: unknown } | null)?.name === "BadInput";
}
