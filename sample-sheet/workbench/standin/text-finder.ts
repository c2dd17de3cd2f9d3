/** TextFinder of the host: looks for a text among what the cells show. */

import { type Book, type Range, shown, tabById } from "./book.ts";
import { imitate } from "./gate.ts";
import type { Area } from "./grid.ts";

type Finder = GoogleAppsScript.Spreadsheet.TextFinder;

export interface FinderParts {
  readonly book: Book;
  readonly tabId: number;
  readonly area: Area;
  readonly text: string;
  readonly rangeAt: (row: number, column: number) => Range;
}

export function makeTextFinder({ book, tabId, area, text, rangeAt }: FinderParts): Finder {
  let matchCase = false;
  let entire = false;
  let next = 0;
  const matches = (): Range[] => {
    const fold = (value: string): string => (matchCase ? value : value.toLowerCase());
    const wanted = fold(text);
    return tabById(book, tabId)
      .read(area)
      .flatMap((row, r) =>
        row.flatMap((cell, c) => {
          const has = fold(shown(cell));
          return (entire ? has === wanted : has.includes(wanted)) ? [rangeAt(area.row + r, area.column + c)] : [];
        }),
      );
  };
  const finder: Finder = imitate<Finder>()("TextFinder", {
    matchCase: (on: boolean) => {
      matchCase = on;
      return finder;
    },
    matchEntireCell: (on: boolean) => {
      entire = on;
      return finder;
    },
    findAll: () => book.gate.reach("TextFinder.findAll", "read", matches),
    findNext: () => book.gate.reach("TextFinder.findNext", "read", () => matches()[next++] ?? null),
  });
  return finder;
}
