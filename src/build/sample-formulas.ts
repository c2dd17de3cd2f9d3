/** Formulas in place: beside the plant list, on the Board, and on the Try it tab with a line of explanation each. */

import type { SampleCell, SampleRow, SampleTab } from "./sample-cell.ts";
import { rangeOn, wholeTab } from "./sample-ranges.ts";

const LOG = rangeOn("Care log", { from: "Date", to: "Event" });
const EVENTS = wholeTab("Events");
/** Settings has "Today" in its first row. */
const AS_OF = "Settings!$B$2";

/** Headings of the columns the sample adds to the right of Plants. The first two are formulas that bring their own. */
export const REST_HEADING = "Days at rest";
export const LAST_HEADING = "Last disturbed";
export const BY_ROW_HEADING = "Rest by row";

const PLANT_NAMES = rangeOn("Plants", { from: "Plant", to: "Plant" }).replace("Plants!", "");

/** Cells to the right of the heading row: one formula fills its whole column. It reads column A only, so it is not circular. */
export function plantHeadings(): SampleCell[] {
  return [
    { formula: `=ROOT_REST(${PLANT_NAMES}, ${LOG}, ${AS_OF}, "${REST_HEADING}", ${EVENTS})` },
    { formula: `=ROOT_LAST(${PLANT_NAMES}, ${LOG}, "${LAST_HEADING}", ${EVENTS})` },
    BY_ROW_HEADING,
  ];
}

/** Cells to the right of a plant's row: the spilled answers take the first two, the third is the sheet's own arithmetic. */
export function plantCells(row: number, lastColumn: string): SampleCell[] {
  return [null, null, { formula: `=IF(${lastColumn}${row}="","",${AS_OF}-${lastColumn}${row})` }];
}

export function boardTab(): SampleTab {
  const plants = rangeOn("Plants", { from: "Plant", to: "Plant", firstRow: 2 });
  return { name: "Board", rows: [[{ formula: `=ROOT_BOARD(${plants}, ${LOG}, ${AS_OF}, ${EVENTS})` }]] };
}

interface Block {
  readonly say: string;
  /** Cells from column B on, first row of the block; its row number is given to write references with. */
  readonly cells: (row: number) => readonly (readonly SampleCell[])[];
  /** Rows the answer spills over. */
  readonly height?: number;
}

const formula = (text: string): SampleCell => ({ formula: `=${text}` });
/** The first seven feeds are salts sold by weight. */
const SALT_ROWS = 8;
const RECIPE: readonly (readonly SampleCell[])[] = [
  ["Feed", "Dose", "Unit"],
  ["Calcium nitrate tetrahydrate", 0.5, "g/L"],
  ["Potassium nitrate", 0.3, "g/L"],
  ["Monopotassium phosphate", 0.07, "g/L"],
  ["Magnesium sulfate heptahydrate", 0.25, "g/L"],
];

const BLOCKS: readonly Block[] = [
  {
    say: "What one gram of a 10-5-5 feed brings to a litre, mg/L: N P K Ca Mg S Fe Mn Zn B Cu Mo",
    cells: () => [[formula('FEED_PPM("10-5-5", 1)')]],
  },
  {
    say: "The same feed as a liquid of 1.2 g/mL, one US teaspoon in a US gallon: N P K",
    cells: () => [[formula('FEED_PPM("10-5-5", 1, "tsp/gal", "N P K", 1.2)')]],
  },
  {
    say: "Nitrogen at 0.25, 0.5 and 1 g/L: type other doses into column C",
    cells: (row) => [
      [formula(`FEED_PPM("10-5-5", C${row}:C${row + 2}, "g/L", "N")`), 0.25],
      [null, 0.5],
      [null, 1],
    ],
  },
  {
    say: "One gram a litre of each salt on the shelf: N P K Ca Mg S Fe",
    cells: () => [[formula(`FEED_PPM(${wholeTab("Feeds", SALT_ROWS)}, 1, "g/L", "N P K Ca Mg S Fe")`)]],
    height: SALT_ROWS - 1,
  },
  { say: "A recipe; change a dose and see the next line follow", cells: () => RECIPE },
  {
    say: "What that recipe makes of the first water on the Waters tab: N P K Ca Mg S",
    cells: (row) => [
      [
        formula(
          `FEED_MIX(${wholeTab("Feeds")}, B${row - RECIPE.length}:D${row - 1}, ${wholeTab("Waters", 2)}, "N P K Ca Mg S")`,
        ),
      ],
    ],
  },
  {
    say: "Doses for 20 litres that come closest to the first target on the Targets tab",
    cells: () => [
      [
        formula(
          `FEED_SOLVE(${wholeTab("Targets", 2)}, ${wholeTab("Feeds", SALT_ROWS + 1)}, ${wholeTab("Waters", 2)}, 20)`,
        ),
      ],
    ],
    height: SALT_ROWS + 1,
  },
  {
    say: "Hardness of the three waters, mg/L CaCO3, and its class (USGS): low-mineral, blend, tap",
    cells: (row) => [
      [
        formula(
          `WATER_HARDNESS(${rangeOn("Waters", { from: "Ca", to: "Ca", firstRow: 2, lastRow: 4 })}, ${rangeOn("Waters", { from: "Mg", to: "Mg", firstRow: 2, lastRow: 4 })})`,
        ),
        formula(`WATER_CLASS(B${row}:B${row + 2})`),
      ],
    ],
    height: 3,
  },
  {
    say: "200 mg/L CaCO3 in German degrees, French degrees and grains a US gallon",
    cells: () => [
      [
        formula('WATER_CONVERT(200, "mg/L CaCO3", "dH")'),
        formula('WATER_CONVERT(200, "mg/L CaCO3", "fH")'),
        formula('WATER_CONVERT(200, "mg/L CaCO3", "gpg")'),
      ],
    ],
  },
  {
    say: "A meter without temperature compensation reads 1.305 mS/cm at 21 °C; at 25 °C that is",
    cells: () => [[formula("METER_AT25(1.305, 21)")]],
  },
  {
    say: "1.41 mS/cm as ppm on a 500, a 640 and a 700 meter: the same water, three numbers",
    cells: () => [[formula("METER_TDS(1.41, 500)"), formula("METER_TDS(1.41, 640)"), formula("METER_TDS(1.41, 700)")]],
  },
  { say: "And back: 700 ppm on a 500 meter, mS/cm", cells: () => [[formula("METER_EC(700, 500)")]] },
  {
    say: "When the big monstera's roots were last disturbed, and days at rest",
    cells: () => [
      [formula(`ROOT_LAST("Big monstera", ${LOG})`), formula(`ROOT_REST("Big monstera", ${LOG}, ${AS_OF})`)],
    ],
  },
];

/** Explanation in column A, answers from column B on, one blank row between the blocks that spill down. */
export function tryItTab(): SampleTab {
  const rows: SampleRow[] = [["What it shows", "Answer"]];
  for (const block of BLOCKS) {
    const cells = block.cells(rows.length + 1);
    const height = Math.max(cells.length, block.height ?? 1);
    for (let at = 0; at < height; at++) rows.push([at === 0 ? block.say : null, ...(cells[at] ?? [])]);
  }
  return { name: "Try it", rows };
}
