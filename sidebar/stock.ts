/** What is left of each feed, from the purchases and the whole Batch log: never a number kept beside them. */

import type { FieldRow, Loaded, Records } from "../src/app/contract.ts";
import { dayFromIso, isoFromDay } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import { measureUnit } from "../src/core/dose.ts";
import { BadInput, isBadInput } from "../src/core/errors.ts";
import { type Feed, fieldCell, readDensity } from "../src/core/feeds.ts";
import { readChoice, readDay, readNumber } from "../src/core/reading.ts";
import { type Bought, converter, SUPPLY_UNITS, type Used } from "../src/core/supply.ts";
import { type Supply, supplies } from "../src/core/supply-left.ts";
import { dosesUsed, type UnreadDose, unreadFor } from "../src/core/supply-log.ts";
import { showDay } from "./show.ts";

export interface Purchase extends Bought {
  /** Row on the tab. */
  readonly row: number;
  readonly id: string;
  readonly lot: string;
  readonly who: string;
}

export interface StockLine {
  readonly feed: string;
  /** Null where nobody can say, as `problem` tells, or where nothing was bought. */
  readonly supply: Supply | null;
  readonly problem: string | null;
  /** Of the latest pack; "" for none. */
  readonly lot: string;
  /** ISO day on which it runs out at the pace of late; null where there is none, or it is years away. */
  readonly runsOut: string | null;
}

type Read = { readonly purchase: Purchase } | { readonly feed: string; readonly problem: string };

function readPurchase({ row, fields }: FieldRow): Read | null {
  const feed = String(fields.Feed ?? "").trim();
  if (feed === "") return null;
  const at = (heading: string) => `${heading} in row ${row} of Purchases`;
  try {
    const unit = readChoice(fieldCell(fields, "Unit"), { what: at("Unit"), choices: SUPPLY_UNITS });
    if (unit === null) throw new BadInput("blank", `${at("Unit")} is blank. Give g, kg, mL or L.`);
    const amount = readNumber(fieldCell(fields, "Amount"), { what: at("Amount"), unit });
    if (amount === null) throw new BadInput("blank", `${at("Amount")} is blank. Give how much of ${feed} it was.`);
    const day = readDay(fieldCell(fields, "Date"), at("Date"));
    const text = (heading: string) => String(fields[heading] ?? "").trim();
    return { purchase: { row, feed, day, amount, unit, id: text("Id"), lot: text("Lot"), who: text("Who") } };
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return { feed, problem: error.message };
  }
}

/** Standing purchases as they can be read, and by nameKey why those of a feed cannot. */
export function readPurchases(rows: readonly FieldRow[]): {
  readonly purchases: readonly Purchase[];
  readonly problems: ReadonlyMap<string, string>;
} {
  const purchases: Purchase[] = [];
  const problems = new Map<string, string>();
  for (const row of rows) {
    const read = readPurchase(row);
    if (read === null) continue;
    if ("purchase" in read) purchases.push(read.purchase);
    else if (!problems.has(nameKey(read.feed))) problems.set(nameKey(read.feed), read.problem);
  }
  return { purchases, problems };
}

/** Everything that batches used, those too old to be sent summed up without a day. */
function readUse({ batches, usedBefore }: Pick<Loaded, "batches" | "usedBefore">): {
  used: readonly Used[];
  unread: readonly UnreadDose[];
} {
  const recent = dosesUsed(
    batches
      .filter(({ state }) => state !== "planned")
      .map(({ day, doses, litres }) => {
        const size = litres === null ? "" : ` of ${litres} L`;
        const on = day === null ? " without a date" : `, ${showDay(day)}`;
        return { day: day === null ? null : dayFromIso(day), doses, where: `the batch${size}${on}` };
      }),
  );
  const before = usedBefore.used.map((one): Used => ({ ...one, day: null }));
  const unreadBefore = usedBefore.unread.map((one): UnreadDose => ({ ...one, day: null }));
  return { used: [...recent.used, ...before], unread: [...recent.unread, ...unreadBefore] };
}

/** After every feed that is used. */
const UNKNOWN_DAYS = Number.MAX_SAFE_INTEGER;
/** A pace of some months says nothing about years. */
const FARTHEST_DAYS = 730;

function densities(feeds: Loaded["feeds"]): (feed: string) => number | null {
  return (feed) => {
    const found = feeds.find(({ fields }) => nameKey(String(fields.Feed ?? "")) === nameKey(feed));
    return found === undefined
      ? null
      : readDensity(fieldCell(found.fields, "Density"), `Density in row ${found.row} of Feeds`);
  };
}

/** One line for each feed of the shelf, of Purchases and of the log; those that run out first come first. */
export function stockOf(
  loaded: Pick<Loaded, "today" | "feeds" | "batches" | "usedBefore">,
  records: Pick<Records, "purchases">,
): StockLine[] {
  const today = dayFromIso(loaded.today) ?? 0;
  const { purchases, problems } = readPurchases(records.purchases);
  const { used, unread } = readUse(loaded);
  const densityOf = densities(loaded.feeds);
  const names = new Map<string, string>();
  const written = [...loaded.feeds, ...records.purchases].map(({ fields }) => String(fields.Feed ?? "").trim());
  for (const name of [...written, ...used.map(({ feed }) => feed)]) {
    if (name !== "" && !names.has(nameKey(name))) names.set(nameKey(name), name);
  }
  const known = [...names.values()];
  const lineOf = (feed: string): StockLine => {
    const mine = ({ feed: one }: { readonly feed: string }) => nameKey(one) === nameKey(feed);
    const bought = purchases.filter(mine);
    const lots = [...bought].sort((a, b) => (a.day ?? 0) - (b.day ?? 0)).filter(({ lot }) => lot !== "");
    const lot = lots[lots.length - 1]?.lot ?? "";
    const nothing = { feed, lot, supply: null, runsOut: null };
    const problem = problems.get(nameKey(feed)) ?? (bought.length === 0 ? null : unreadFor(feed, unread, known));
    if (problem !== null) return { ...nothing, problem };
    try {
      const [supply] = supplies({ bought, used: used.filter(mine), today, densityOf });
      if (supply === undefined || bought.length === 0) return { ...nothing, supply: supply ?? null, problem: null };
      const { daysLeft } = supply;
      const far = daysLeft === null || daysLeft > FARTHEST_DAYS;
      return { feed, lot, supply, problem: null, runsOut: far ? null : isoFromDay(today + Math.floor(daysLeft)) };
    } catch (error) {
      if (!isBadInput(error)) throw error;
      return { ...nothing, problem: error.message };
    }
  };
  const lines = known.map(lineOf);
  const rank = ({ supply, problem, runsOut }: StockLine): number =>
    problem !== null
      ? 0
      : supply === null || supply.bought === 0
        ? 4
        : supply.onHand < 0
          ? 0
          : runsOut === null
            ? 3
            : 2;
  return lines.sort(
    (a, b) =>
      rank(a) - rank(b) ||
      (a.supply?.daysLeft ?? UNKNOWN_DAYS) - (b.supply?.daysLeft ?? UNKNOWN_DAYS) ||
      a.feed.localeCompare(b.feed, "en"),
  );
}

/** What is left of a feed in the unit it is measured in; null where nobody can say. */
export function onHandIn(
  loaded: Pick<Loaded, "today" | "feeds" | "batches" | "usedBefore">,
  records: Pick<Records, "purchases"> | null,
): (feed: Feed) => number | null {
  if (records === null) return () => null;
  const lines = new Map(stockOf(loaded, records).map((line) => [nameKey(line.feed), line]));
  return (feed) => {
    const supply = lines.get(nameKey(feed.name))?.supply ?? null;
    if (supply === null || supply.bought === 0) return null;
    const unit = measureUnit(feed);
    if (supply.unit !== unit && feed.densityGPerMl === null) return null;
    return converter(feed.name, unit, feed.densityGPerMl)(supply.onHand, supply.unit);
  };
}
