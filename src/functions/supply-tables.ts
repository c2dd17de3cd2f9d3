/** The tabs Purchases and Batch log as ranges: what came onto the shelf, what batches used, and what is wrong for which feed. */

import { type Cell, nameKey } from "../core/cell.ts";
import { BadInput, isBadInput } from "../core/errors.ts";
import { readChoice, readDay, readNumber, readText } from "../core/reading.ts";
import { type Bought, SUPPLY_UNITS } from "../core/supply.ts";
import { dosesUsed, type LogUse } from "../core/supply-log.ts";
import type { Table } from "./record.ts";
import { voidRowsOf } from "./void-rows.ts";

export interface Supplied {
  readonly bought: readonly Bought[];
  readonly use: LogUse;
  /** By nameKey: why nobody can say what is left of this feed. */
  readonly unreadable: ReadonlyMap<string, string>;
}

type Broken = Map<string, string>;

const cellIn = (table: Table, row: number, heading: string): Cell => table.cell(row, table.column(heading));

/** What `read` gives; where it throws BadInput the feeds are marked with its sentence, and null comes back. */
function orBroken<Read>(broken: Broken, feeds: readonly string[], read: () => Read): Read | null {
  try {
    return read();
  } catch (error) {
    if (!isBadInput(error)) throw error;
    for (const feed of feeds) if (!broken.has(nameKey(feed))) broken.set(nameKey(feed), error.message);
    return null;
  }
}

/** A row without a feed is passed over, and so is one that only takes another back. Feed cells with errors throw. */
function readPurchases(table: Table, broken: Broken): Bought[] {
  const gone = voidRowsOf(table);
  const bought: Bought[] = [];
  for (let row = 0; row < table.rowCount; row++) {
    if (gone.has(row)) continue;
    const at = (heading: string) => `${heading} in ${table.where(row)}`;
    const feed = readText(cellIn(table, row, "Feed"), at("Feed"));
    const amountCell = cellIn(table, row, "Amount");
    if (feed === null || (amountCell.kind === "blank" && cellIn(table, row, "Corrects").kind !== "blank")) continue;
    const entry = orBroken(broken, [feed], (): Bought => {
      const unit = readChoice(cellIn(table, row, "Unit"), { what: at("Unit"), choices: SUPPLY_UNITS });
      const amount = readNumber(amountCell, { what: at("Amount"), unit: unit ?? undefined });
      if (amount === null) throw new BadInput("blank", `${at("Amount")} is blank. Give how much of ${feed} it was.`);
      if (unit === null) throw new BadInput("blank", `${at("Unit")} is blank. Give g, kg, mL or L.`);
      return { feed, day: readDay(cellIn(table, row, "Date"), at("Date")), amount, unit };
    });
    if (entry !== null) bought.push(entry);
  }
  return bought;
}

/** Planned batches have used nothing yet. */
function readUse(table: Table, broken: Broken): LogUse {
  const gone = voidRowsOf(table);
  const used: LogUse["used"][number][] = [];
  const unread: LogUse["unread"][number][] = [];
  for (let row = 0; row < table.rowCount; row++) {
    const state = cellIn(table, row, "State");
    if (gone.has(row) || (state.kind === "text" && nameKey(state.value) === "planned")) continue;
    const where = table.where(row);
    const doses = readText(cellIn(table, row, "Doses"), `Doses in ${where}`) ?? "";
    const use = dosesUsed([{ day: null, doses, where }]);
    const feeds = use.used.map(({ feed }) => feed);
    const day = orBroken(broken, feeds, () => readDay(cellIn(table, row, "Date"), `Date in ${where}`));
    used.push(...use.used.map((one) => ({ ...one, day })));
    unread.push(...use.unread.map((one) => ({ ...one, day })));
  }
  return { used, unread };
}

/** Throws BadInput where a cell that cannot be read could be about any feed. */
export function readSupplied(purchases: Table, batches: Table): Supplied {
  const unreadable: Broken = new Map();
  const bought = readPurchases(purchases, unreadable);
  return { bought, use: readUse(batches, unreadable), unreadable };
}
