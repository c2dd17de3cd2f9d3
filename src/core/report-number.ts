/** Numbers as reports print them: "<0.1", "20–30", "34,5", "1,234", "not detected". */

export interface Printed {
  /** All readings of the number; more than one has to be asked about. */
  readonly readings: readonly number[];
  /** What was printed, for the person: "less than 0.1, counted as 0.05". Empty for a plain number. */
  readonly note: string;
}

const NONE = /\b(n\.?\s?d\.?|not\s+detect(ed|able)|none(\s+detected)?|bdl|b\.d\.l\.|absent)(?![a-z])/i;
/** Between thousands: a space, or one that does not break a line, as pages are copied. */
const SPACES = "\\u0020\\u00a0\\u2009\\u202f";
const NUMBER = `\\d(?:[\\d'’]|[.,](?=\\d)|[${SPACES}](?=\\d{3}(?!\\d)))*|[.,]\\d+`;
const PATTERN = new RegExp(
  `(<=?|≤|less\\s+than|below|>=?|≥|more\\s+than)?\\s*([-−]?(?:${NUMBER}))(?:\\s*(?:-|–|—|to|\\.\\.\\.?|…)\\s*(${NUMBER}))?`,
  "gi",
);

/**
 * The numbers in what is left of a line once name, basis and unit are taken out; none where there is no number. A range
 * counts as its middle, "less than" as half of the limit (common practice, no source), "not detected" as 0.
 */
export function readPrinted(text: string): Printed[] {
  const found = [...matches(text)];
  if (found.length === 0) return NONE.test(text) ? [{ readings: [0], note: "not detected, counted as 0" }] : [];
  return found.map(([, sign = "", first = "", second]) => {
    const low = readingsOf(first);
    if (second !== undefined) {
      const high = readingsOf(second);
      const [a = 0, b = 0] = [low[0], high[0]];
      if (low.length !== 1 || high.length !== 1 || b < a) return { readings: [], note: "" };
      return { readings: [(a + b) / 2], note: `${first} to ${second}, counted as the middle` };
    }
    if (/^(<|≤|less|below)/i.test(sign)) {
      return { readings: low.map((value) => value / 2), note: `less than ${first}, counted as half of it` };
    }
    // more than a number is no measurement: nothing to count with
    return { readings: sign === "" ? low : [], note: "" };
  });
}

function* matches(text: string): Generator<RegExpExecArray> {
  const pattern = new RegExp(PATTERN);
  for (let found = pattern.exec(text); found !== null; found = pattern.exec(text)) yield found;
}

/** "1,234" and "1.234" can be 1.234 and 1234; one kind of mark repeated, or two kinds, can be read in one way only. */
function readingsOf(digits: string): number[] {
  const plain = digits.replace(/−/g, "-").replace(/[^\d.,-]/g, "");
  const marks = plain.replace(/[^.,]/g, "");
  if (marks.length === 1) {
    const decimal = Number(plain.replace(",", "."));
    const thousands = /^-?[1-9]\d{0,2}[.,]\d{3}$/.test(plain);
    return thousands ? [decimal, Number(plain.replace(/[.,]/, ""))] : numbers(plain.replace(",", "."));
  }
  const last = marks.charAt(marks.length - 1);
  const repeated = marks.indexOf(last) !== marks.length - 1;
  const groups = plain.split(/[.,]/);
  const grouped = groups.slice(1, repeated ? undefined : -1).every((group) => group.length === 3);
  if (!grouped) return [];
  const whole = repeated ? plain : plain.slice(0, plain.lastIndexOf(last));
  const rest = repeated ? "" : `.${groups[groups.length - 1]}`;
  return numbers(whole.replace(/[.,]/g, "") + rest);
}

function numbers(text: string): number[] {
  const value = Number(text);
  return Number.isFinite(value) ? [value] : [];
}
