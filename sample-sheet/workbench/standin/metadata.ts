/** Developer metadata of the host: marks on tabs and columns that travel with them, and the finder. */

import { type Book, type Range, type Sheet, tabById } from "./book.ts";
import { imitate } from "./gate.ts";
import type { Area, GridMark } from "./grid.ts";

type Metadata = GoogleAppsScript.Spreadsheet.DeveloperMetadata;
type Finder = GoogleAppsScript.Spreadsheet.DeveloperMetadataFinder;
type Location = GoogleAppsScript.Spreadsheet.DeveloperMetadataLocation;
type Visibility = GoogleAppsScript.Spreadsheet.DeveloperMetadataVisibility;
type LocationType = GoogleAppsScript.Spreadsheet.DeveloperMetadataLocationType;

export const VISIBILITY = {
  DOCUMENT: "DOCUMENT",
  PROJECT: "PROJECT",
} as unknown as typeof GoogleAppsScript.Spreadsheet.DeveloperMetadataVisibility;
export const LOCATION_TYPE = {
  SPREADSHEET: "SPREADSHEET",
  SHEET: "SHEET",
  ROW: "ROW",
  COLUMN: "COLUMN",
} as unknown as typeof GoogleAppsScript.Spreadsheet.DeveloperMetadataLocationType;

/** How metadata leads back to ranges and sheets. */
export interface Places {
  readonly sheetOf: (tabId: number) => Sheet;
  readonly rangeOf: (tabId: number, area: Area) => Range;
}

/** The mark that addDeveloperMetadata(key, [value], [visibility]) leaves; visibility is DOCUMENT unless said. */
export function markOf(book: Book, column: number | null, key: string, value: unknown, visibility: unknown): GridMark {
  const isVisibility = (given: unknown): boolean => given === "DOCUMENT" || given === "PROJECT";
  const onlyVisibility = visibility === undefined && isVisibility(value);
  return {
    id: book.newId(),
    column,
    key,
    value: value === undefined || onlyVisibility ? "" : String(value),
    visibility: (onlyVisibility ? value : isVisibility(visibility) ? visibility : "DOCUMENT") as "DOCUMENT" | "PROJECT",
  };
}

function makeMetadata(book: Book, places: Places, tabId: number, id: number): Metadata {
  const mark = (): GridMark => {
    const found = tabById(book, tabId)
      .marks()
      .find((each) => each.id === id);
    if (!found) throw new Error("The developer metadata no longer exists.");
    return found;
  };
  const change = (name: string, patch: Partial<GridMark>): Metadata => {
    book.gate.reach(`DeveloperMetadata.${name}`, "write", () => tabById(book, tabId).putMark({ ...mark(), ...patch }));
    return metadata;
  };
  const location = (): Location =>
    imitate<Location>()("DeveloperMetadataLocation", {
      getColumn: () => {
        const { column } = mark();
        return column === null
          ? null
          : places.rangeOf(tabId, { row: 1, column, rows: tabById(book, tabId).rows(), columns: 1 });
      },
      getRow: () => null,
      getLocationType: () => (mark().column === null ? LOCATION_TYPE.SHEET : LOCATION_TYPE.COLUMN),
      getSheet: () => (mark().column === null ? places.sheetOf(tabId) : null),
    });
  const metadata: Metadata = imitate<Metadata>()("DeveloperMetadata", {
    getId: () => id,
    getKey: () => mark().key,
    getValue: () => mark().value,
    getVisibility: () => mark().visibility as unknown as Visibility,
    getLocation: location,
    setKey: (key: string) => change("setKey", { key }),
    setValue: (value: string) => change("setValue", { value }),
    moveToColumn: (range: Range) => change("moveToColumn", { column: range.getColumn() }),
    remove: () => {
      book.gate.reach("DeveloperMetadata.remove", "write", () => tabById(book, tabId).removeMark(id));
    },
  });
  return metadata;
}

/** All marks on some tabs as the host's objects. */
export function metadataOn(book: Book, places: Places, tabIds: readonly number[], keep: (mark: GridMark) => boolean) {
  return tabIds.flatMap((tabId) =>
    tabById(book, tabId)
      .marks()
      .filter(keep)
      .map((mark) => makeMetadata(book, places, tabId, mark.id)),
  );
}

export function makeFinder(book: Book, places: Places, tabIds: () => readonly number[]): Finder {
  const tests: ((mark: GridMark) => boolean)[] = [];
  const narrow = (test: (mark: GridMark) => boolean): Finder => {
    tests.push(test);
    return finder;
  };
  const finder: Finder = imitate<Finder>()("DeveloperMetadataFinder", {
    withId: (id: number) => narrow((mark) => mark.id === id),
    withKey: (key: string) => narrow((mark) => mark.key === key),
    withValue: (value: string) => narrow((mark) => mark.value === value),
    withVisibility: (visibility: Visibility) => narrow((mark) => mark.visibility === String(visibility)),
    withLocationType: (type: LocationType) =>
      narrow((mark) => (mark.column === null ? "SHEET" : "COLUMN") === String(type)),
    find: () =>
      book.gate.reach("DeveloperMetadataFinder.find", "read", () =>
        metadataOn(book, places, tabIds(), (mark) => tests.every((test) => test(mark))),
      ),
  });
  return finder;
}
