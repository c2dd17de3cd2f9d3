/** Plant lists of six households, each kept in its own way; all invented. */

import type { CellChange, CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { dateCell } from "../sheet/workbook.ts";

type Row = readonly (CellValue | CellChange)[];

/** Plain headings, date cells, volumes in mL. */
export const TIDY: readonly Row[] = [
  ["Name", "Room", "Species", "Pot size", "Bought", "Last repotted"],
  ["Hoya", "Hall", "Hoya carnosa", 700, dateCell("2021-05-02"), dateCell("2025-04-12")],
  ["Fern", "Bath", "Nephrolepis exaltata", 450, dateCell("2022-03-30"), dateCell("2024-09-01")],
  ["Arum", "Hall", "Spathiphyllum wallisii", 1200, "", ""],
  ["Ivy", "Bath", "Hedera helix", 450, dateCell("2023-01-15"), dateCell("2025-04-12")],
];

/** Headings in German, days as texts, day first by one of them. */
export const GERMAN: readonly Row[] = [
  ["Nr.", "Pflanze", "Standort", "Inhalt", "umgetopft"],
  [1, "Efeu", "Küche", "500 ml", "3.4.2025"],
  [2, "Farn", "Bad", "750 ml", "28.2.2025"],
  [3, "Einblatt", "Küche", "1000 ml", "1.9.2024"],
  [4, "Wachsblume", "Bad", "500 ml", "–"],
];

/** Days that could all be read in two ways; widths of pots, not volumes; place after the name. */
export const SLASHES: readonly Row[] = [
  ["Plant name", "Shelf", "Pot", "Re-potted", "Remarks"],
  ["Pothos", "Top", 14, "3/4/2025", "=1+1"],
  ["Philodendron", "Top", 12, "12/11/2024", ""],
  ["Dracaena", "Floor", 21, "5/5/2023", "slow"],
];

/** A column for each repot, months in letters, one cell nobody can read. */
export const BY_YEAR: readonly Row[] = [
  ["Plant", "Window", "First repot", "Second repot", "Root trim", "Since"],
  ["Aloe", "South", "12 May 2022", "3 June 2024", "", dateCell("2020-01-01")],
  ["Agave", "South", "May 2022", "14 Apr 2025", "14 Apr 2025", dateCell("2021-01-01")],
  ["Cactus", "East", "", "1 Mar 2031", "2 Feb 2024", dateCell("2019-01-01")],
];

/** Names that stand more than once, beside a column in which each stands once. */
export const TWINS: readonly Row[] = [
  ["Tag", "Name", "Corner", "Potted up"],
  ["S1", "Spider plant", "Desk", "2024-05-01"],
  ["S2", "Spider plant", "Desk", "2025-02-01"],
  ["B1", "Begonia", "Sill", "2025-02-01"],
  ["B2", "begonia ", "Sill", ""],
];

/** A title over the list, so that the headings stand in row 3. */
export const TITLED: readonly Row[] = [
  ["Our green friends"],
  [],
  ["Plant", "Place", "Repotted"],
  ["Palm", "Stair", "2025-01-01"],
  ["Yucca", "Stair", "2024-01-01"],
];
