/** A made-up care log for timing: every plant gets its share of events over two years, rows in no order. */

export interface MadeLog {
  readonly plants: readonly string[];
  readonly rows: readonly { readonly day: number; readonly plant: string; readonly event: string }[];
}

/** 2024-11-25 as days since 1970-01-01. */
const FIRST_DAY = 20052;

/** Steps through days and plants by numbers without a common factor, so that neither column is sorted. */
export function madeLog(plantCount: number, rowCount: number): MadeLog {
  const plants = Array.from({ length: plantCount }, (_, at) => `Plant ${at + 1}`);
  const rows = Array.from({ length: rowCount }, (_, at) => ({
    day: FIRST_DAY + ((at * 7919) % 730),
    plant: plants[(at * 31) % plantCount] as string,
    event: at % 9 === 0 ? "Repot" : "Top up",
  }));
  return { plants, rows };
}
