/** Feeds, waters and targets for the panel, each row with its name. */

import { nameKey } from "../core/cell.ts";
import { readTarget, readWater } from "../core/waters.ts";
import { readRows, type SheetRow } from "../sheet/rows.ts";
import { FEEDS, TARGETS, WATERS } from "../sheet/shelf-tabs.ts";
import type { TabSpec } from "../sheet/spec.ts";
import type { FieldRow } from "./contract.ts";
import { type Loading, openTab, part } from "./loading.ts";

function fieldRow({ row, fields }: SheetRow): FieldRow {
  return { row, fields: { ...fields } };
}

/** Columns whose absence changes what arithmetic makes of a row. */
function counted(spec: TabSpec): string[] {
  return spec.columns
    .filter(({ heading, kind, aside }) => heading === spec.key || (kind === "number" && aside !== true))
    .map(({ heading }) => heading);
}

/** Rows with a name; a row without one is told. */
function namedRows(loading: Loading, spec: TabSpec): SheetRow[] {
  const open = openTab(loading, spec, counted(spec));
  if (!open?.columns.at.has(spec.key)) return [];
  return readRows(open.values, spec, open.columns, loading.book.workbook.dayOf).filter(
    ({ fields, problems, where }) => {
      const badName = problems.find(({ heading }) => heading === spec.key);
      if (badName) loading.say.add(spec.name, badName.sentence);
      else if (fields[spec.key] === undefined) {
        loading.say.add(spec.name, `There is no name in column ${spec.key}, ${where}, so that row is not used.`);
      }
      return !badName && fields[spec.key] !== undefined;
    },
  );
}

/** Feeds go to the panel as they stand: the shelf itself says why one of them enters no recipe. */
export function readFeeds(loading: Loading): FieldRow[] {
  const rows = namedRows(loading, FEEDS);
  for (const { problems } of rows) {
    for (const { aside, sentence } of problems) if (aside) loading.say.add("Feeds", sentence);
  }
  return rows.map(fieldRow);
}

/** Waters and targets that core can read; the others are told and left out, and so is a second one of a name. */
function readChecked(
  loading: Loading,
  spec: TabSpec,
  read: (fields: SheetRow["fields"], where: string) => unknown,
): FieldRow[] {
  const firstRow = new Map<string, number>();
  const used: FieldRow[] = [];
  for (const row of namedRows(loading, spec)) {
    for (const { sentence } of row.problems) loading.say.add(spec.name, sentence);
    if (row.problems.some(({ aside }) => !aside)) continue;
    const name = String(row.fields[spec.key]);
    const earlier = firstRow.get(nameKey(name));
    if (earlier !== undefined) {
      loading.say.add(
        spec.name,
        `“${name}” in ${row.where} also stands in row ${earlier}, which is the one used. Give one of them another name.`,
      );
      continue;
    }
    const usable = part(loading, spec.name, false, () => {
      read(row.fields, row.where);
      return true;
    });
    if (!usable) continue;
    firstRow.set(nameKey(name), row.row);
    used.push(fieldRow(row));
  }
  return used;
}

export function readWaters(loading: Loading): FieldRow[] {
  return readChecked(loading, WATERS, readWater);
}

export function readTargets(loading: Loading): FieldRow[] {
  return readChecked(loading, TARGETS, readTarget);
}
