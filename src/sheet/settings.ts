/** The Settings tab: which rows there are, what they hold, and today's date kept as a plain date cell. */

import { isoFromDay } from "../core/calendar.ts";
import { type Cell, headingKey, nameKey, readCell } from "../core/cell.ts";
import { DUE_SETTINGS } from "../core/due-rules.ts";
import { BadInput } from "../core/errors.ts";
import type { Log } from "./append.ts";
import { type Book, type Columns, columnAt, findColumns, findTab, noTab } from "./find.ts";
import { SETTINGS } from "./list-tabs.ts";
import { readTab } from "./open.ts";
import type { PlainCell, TabPort } from "./port.ts";
import { refuseNewer } from "./schema.ts";
import { marksHold, rearranged, settle } from "./settle.ts";
import { cellOf } from "./stored.ts";

export interface SettingSpec {
  readonly setting: string;
  readonly value: PlainCell;
  readonly note: string;
}

export const TODAY = "Today";
export const PEOPLE = "People";
export const METER_SCALE = "Meter scale";
export const PLANT_LIST_TAB = "Plant list tab";
export const PLANT_LIST_COLUMNS = "Plant list columns";

/** The rows a new Settings tab gets. The pH range and the days of rest are common practice, no source. */
export function settingRows(today: number): readonly SettingSpec[] {
  return [
    {
      setting: TODAY,
      value: { day: today },
      note: "A plain date, for formulas to count to. Refreshed when the panel opens and from the menu.",
    },
    { setting: PEOPLE, value: null, note: "The household, separated by commas." },
    {
      setting: METER_SCALE,
      value: null,
      note: "500, 640 or 700 for a meter that shows ppm; blank for one that shows mS/cm.",
    },
    { setting: "Scale step g", value: 0.1, note: "The smallest step your scale shows, in g." },
    { setting: "Scale most g", value: null, note: "The most your scale takes at once, in g." },
    { setting: "Syringe step mL", value: 0.1, note: "The smallest mark on your syringe, in mL." },
    { setting: "Syringe most mL", value: null, note: "The most your syringe holds, in mL." },
    {
      setting: "Spoons",
      value: null,
      note: "Grams of a level spoon of each feed, weighed once: Epsom salt: 1.1 g, 4.9 g; Calcium nitrate: 1.3 g",
    },
    {
      setting: "Spoonfuls at most",
      value: 12,
      note: "How many spoonfuls of one feed you are willing to count. Common practice, no source.",
    },
    {
      setting: "Stock solutions",
      value: null,
      note: "Bottles that stand ready: Monopotassium phosphate: 5 g in 100 mL",
    },
    { setting: "pH low", value: 5.5, note: "The lowest pH that is fine." },
    { setting: "pH high", value: 6, note: "The highest pH that is fine." },
    {
      setting: "EC calibration days",
      value: 90,
      note: "After this many days the EC meter goes into a standard again. Common practice, no source.",
    },
    {
      setting: "pH calibration days",
      value: 30,
      note: "After this many days the pH meter goes into a buffer again. Common practice, no source.",
    },
    {
      setting: "Rest days",
      value: 180,
      note: "Roots are left alone for this many days unless there is a reason. Common practice, no source.",
    },
    {
      setting: "Rest days in season",
      value: null,
      note: "Another number of days for the months below, when roots grow back faster; blank for the same all year.",
    },
    {
      setting: "Season months",
      value: null,
      note: "Your own growing season, months by name: Apr to Sep, or Oct to Mar south of the equator.",
    },
    ...DUE_SETTINGS.map(({ setting, value, note }) => ({
      setting,
      value,
      note: `${note} "off" for never. Common practice, no source.`,
    })),
    {
      setting: PLANT_LIST_TAB,
      value: null,
      note: "A tab of your own that lists the plants, instead of Plants. Choose it in the panel.",
    },
    { setting: PLANT_LIST_COLUMNS, value: null, note: "Which of its columns is which. Written by the panel." },
  ];
}

export interface Settings {
  /** The tab as it was read. */
  readonly log: Log;
  readonly tab: TabPort;
  readonly columns: Columns;
  /** The cell beside a setting; blank when the row is not there. */
  cell(setting: string): Cell;
  /** The value as text, without the spaces around it; "" when blank. */
  text(setting: string): string;
  /** Every setting with its value as text. */
  all(): Record<string, string>;
  /** Row on the tab, or null when there is none. */
  row(setting: string): number | null;
  /** Sentences on settings that stand there twice. */
  readonly problems: readonly string[];
}

/** Reads the Settings tab; null when there is none. Throws BadInput when its columns cannot be told. */
export function readSettings(book: Book): Settings | null {
  const tab = findTab(book, SETTINGS);
  if (!tab) return null;
  const { values, columns } = readTab(book, SETTINGS, tab);
  const nameAt = columnAt(columns, "Setting") - 1;
  const valueAt = columnAt(columns, "Value") - 1;
  const rows = new Map<string, number>();
  const problems: string[] = [];
  values.forEach((cells, index) => {
    const name = cells[nameAt];
    if (index === 0 || typeof name !== "string" || nameKey(name) === "") return;
    const earlier = rows.get(nameKey(name));
    if (earlier === undefined) rows.set(nameKey(name), index);
    else {
      problems.push(
        `“${name}” stands in rows ${earlier + 1} and ${index + 1} of “${tab.name}”. The first one counts; clear the other.`,
      );
    }
  });
  const cell = (setting: string): Cell => {
    const index = rows.get(nameKey(setting));
    return readCell(index === undefined ? "" : values[index]?.[valueAt], book.workbook.dayOf);
  };
  const text = (setting: string): string => {
    const found = cell(setting);
    if (found.kind === "text" || found.kind === "number") return String(found.value);
    return found.kind === "day" ? isoFromDay(found.day) : "";
  };
  return {
    log: { book, spec: SETTINGS, tab, values, columns },
    tab,
    columns,
    cell,
    text,
    all() {
      const all: Record<string, string> = {};
      for (const index of rows.values()) {
        const name = String(values[index]?.[nameAt]).trim();
        all[name] = text(name);
      }
      return all;
    },
    row(setting) {
      const index = rows.get(nameKey(setting));
      return index === undefined ? null : index + 1;
    },
    problems,
  };
}

/** Reads the Settings tab; throws BadInput when there is none. */
export function requireSettings(book: Book): Settings {
  const settings = readSettings(book);
  if (!settings) throw noTab(SETTINGS);
  return settings;
}

/** Writes values beside their settings; a setting without a row gets one below the last. Four calls each. */
export function writeSettings(settings: Settings, written: readonly (readonly [setting: string, PlainCell])[]): void {
  refuseNewer(settings.log.book, settings.tab, SETTINGS.name);
  columnAt(settings.columns, "Setting");
  columnAt(settings.columns, "Value");
  if (!marksHold(settings.log)) throw rearranged(settings.log);
  for (const [setting, value] of written) writeSetting(settings.log, setting, value);
}

/** More often than this, and people are rearranging the tab faster than it can be written to. */
const TRIES = 4;

/** Reads the tab anew, whole, just before the write and looks at it just after: people sort Settings, too. */
function writeSetting({ book, spec, tab }: Log, setting: string, value: PlainCell, tries = TRIES): void {
  const values = tab.readAll();
  const log: Log = { book, spec, tab, values, columns: findColumns(book, spec, tab, values[0] ?? []) };
  const nameAt = columnAt(log.columns, "Setting");
  const valueAt = columnAt(log.columns, "Value");
  const name = (at: number) => values[at]?.[nameAt - 1];
  const there = values.findIndex((_, at) => at > 0 && nameKey(String(name(at) ?? "")) === nameKey(setting));
  if (there !== -1) {
    tab.write(there + 1, valueAt, [[value]]);
    const record = { Setting: cellOf(name(there), book.workbook), Value: value };
    settle(log, { records: [record], rows: [there + 1], headings: ["Value"], fresh: false });
    return;
  }
  const below = Math.max(2, values.length + 1);
  if (valueAt === nameAt + 1) tab.write(below, nameAt, [[setting, value]]);
  else {
    tab.write(below, nameAt, [[setting]]);
    tab.write(below, valueAt, [[value]]);
  }
  const record = { Setting: setting, Value: value };
  const again = settle(log, { records: [record], rows: [below], headings: ["Setting", "Value"], fresh: true });
  // Rows inserted further up had moved another setting there; it stands again, and this one still has to.
  if (again.length === 0) return;
  if (tries <= 1) throw rearranged(log);
  writeSetting(log, setting, value, tries - 1);
}

/** Puts today's date beside Today if another one stands there. Gives whether it wrote. */
export function refreshToday(settings: Settings, today: number): boolean {
  const cell = settings.cell(TODAY);
  if (cell.kind === "day" && cell.day === today) return false;
  writeSettings(settings, [[TODAY, { day: today }]]);
  return true;
}

/** The names in People; commas, semicolons or line ends part them. */
export function readPeople(text: string): string[] {
  const names = text.split(/[,;\n]/).map((name) => name.trim().replace(/\s+/g, " "));
  return names.filter(
    (name, index) => name !== "" && names.findIndex((other) => nameKey(other) === nameKey(name)) === index,
  );
}

/** The meter's scale, or null for mS/cm. Throws BadInput for anything but the three scales in use. */
export function readMeterScale(text: string): number | null {
  if (text === "" || headingKey(text) === "ms/cm") return null;
  const scale = Number(text);
  if (scale === 500 || scale === 640 || scale === 700) return scale;
  throw new BadInput(
    "meter-scale",
    `Meter scale in Settings is “${text}”. Write 500, 640 or 700, or leave it blank for a meter that shows mS/cm.`,
  );
}

/** What a person typed as a setting: plain numbers go in as numbers, everything else as text, nothing as a blank. */
export function settingCell(text: string): PlainCell {
  const value = text.trim();
  if (value === "") return null;
  return /^\d+(\.\d+)?$/.test(value) ? Number(value) : value;
}
