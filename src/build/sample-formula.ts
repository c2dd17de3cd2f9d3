/** Reads the formulas of the sample sheet: calls, references, texts, numbers, =, + and -; nothing more is used there. */

export interface Range {
  /** Null: the formula's own tab. */
  readonly tab: string | null;
  /** From 0. */
  readonly firstColumn: number;
  readonly lastColumn: number;
  readonly firstRow: number;
  /** Null: open at the bottom. */
  readonly lastRow: number | null;
}

export type Formula =
  | { readonly kind: "value"; readonly value: string | number | boolean }
  | { readonly kind: "range"; readonly range: Range; readonly single: boolean }
  | { readonly kind: "call"; readonly name: string; readonly args: readonly Formula[] }
  | { readonly kind: "operation"; readonly sign: "=" | "+" | "-"; readonly left: Formula; readonly right: Formula };

interface Token {
  readonly kind: "text" | "number" | "range" | "word" | "sign";
  readonly text: string;
}

const REFERENCE = String.raw`(?:(?:'(?:[^']|'')+'|[A-Za-z]\w*)!)?\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}(?:\$?\d+)?)?(?![\w(])`;
const TOKEN = new RegExp(
  String.raw`\s*(?:("(?:[^"]|"")*")|(${REFERENCE})|(\d+(?:\.\d+)?)|([A-Z][A-Z0-9_]*)|([(),=+-]))`,
  "y",
);

/** The pieces of a formula, "=" in front left out. Throws for anything the sample does not use. */
export function formulaTokens(formula: string): Token[] {
  const tokens: Token[] = [];
  TOKEN.lastIndex = 1;
  while (TOKEN.lastIndex < formula.length) {
    const at = TOKEN.lastIndex;
    const found = TOKEN.exec(formula);
    if (found === null) throw new Error(`${formula} cannot be read from "${formula.slice(at)}" on.`);
    const [, text, range, number, word, sign] = found;
    if (text !== undefined) tokens.push({ kind: "text", text });
    else if (range !== undefined) tokens.push({ kind: "range", text: range });
    else if (number !== undefined) tokens.push({ kind: "number", text: number });
    else if (word !== undefined) tokens.push({ kind: "word", text: word });
    else tokens.push({ kind: "sign", text: sign ?? "" });
  }
  return tokens;
}

function columnIndex(letters: string): number {
  let index = 0;
  for (const letter of letters) index = index * 26 + letter.charCodeAt(0) - 64;
  return index - 1;
}

export function readRange(text: string): Range {
  const parts = /^(?:('(?:[^']|'')+'|\w+)!)?\$?([A-Z]+)\$?(\d+)(?::\$?([A-Z]+)(?:\$?(\d+))?)?$/.exec(text);
  if (parts === null) throw new Error(`${text} is no range.`);
  const [, tab, from = "A", row = "1", to, lastRow] = parts;
  const firstRow = Number(row) - 1;
  return {
    tab: tab === undefined ? null : tab.startsWith("'") ? tab.slice(1, -1).replace(/''/g, "'") : tab,
    firstColumn: columnIndex(from),
    lastColumn: columnIndex(to ?? from),
    firstRow,
    lastRow: to === undefined ? firstRow : lastRow === undefined ? null : Number(lastRow) - 1,
  };
}

export function readFormula(formula: string): Formula {
  const tokens = formulaTokens(formula);
  let at = 0;
  const next = (): Token => {
    const token = tokens[at++];
    if (token === undefined) throw new Error(`${formula} breaks off.`);
    return token;
  };
  const isSign = (...signs: string[]): boolean => {
    const token = tokens[at];
    return token?.kind === "sign" && signs.includes(token.text);
  };
  const expect = (sign: string): void => {
    if (!isSign(sign)) throw new Error(`${formula} lacks "${sign}".`);
    at += 1;
  };
  const call = (name: string): Formula => {
    const args: Formula[] = [];
    expect("(");
    while (!isSign(")")) {
      args.push(comparison());
      if (!isSign(")")) expect(",");
    }
    expect(")");
    return { kind: "call", name, args };
  };
  const term = (): Formula => {
    const { kind, text } = next();
    if (kind === "text") return { kind: "value", value: text.slice(1, -1).replace(/""/g, '"') };
    if (kind === "number") return { kind: "value", value: Number(text) };
    if (kind === "range") return { kind: "range", range: readRange(text), single: !text.includes(":") };
    if (kind === "word" && (text === "TRUE" || text === "FALSE")) return { kind: "value", value: text === "TRUE" };
    if (kind === "word") return call(text);
    throw new Error(`${formula} has a "${text}" out of place.`);
  };
  const chain = (part: () => Formula, ...signs: ("=" | "+" | "-")[]): Formula => {
    let left = part();
    while (isSign(...signs)) {
      const sign = next().text as "=" | "+" | "-";
      left = { kind: "operation", sign, left, right: part() };
    }
    return left;
  };
  const sum = (): Formula => chain(term, "+", "-");
  const comparison = (): Formula => chain(sum, "=");
  const whole = comparison();
  if (at < tokens.length) throw new Error(`${formula} goes on after its end.`);
  return whole;
}
