/** Each board as data: its tab, its one formula, the colours of its words. */

import type { DueKind } from "../core/due.ts";
import { REST_WORDS } from "../core/roots.ts";
import type { WordColour } from "./port.ts";
import { TODAY } from "./settings.ts";

/** Ranges and cells of the workbook as a formula writes them. */
export interface References {
  /** The names of the plants, from a row on. */
  plants(firstRow: number): string;
  readonly log: string;
  readonly events: string;
  /** Settings as a table of rules. */
  readonly rules: string;
  /** null where there is no such tab. */
  readonly claims: string | null;
  /** The cell beside a setting; throws BadInput when it has no row. */
  setting(name: string): string;
}

export interface BoardSpec {
  /** Name of the tab when it is made. */
  readonly name: string;
  /** By it the formula is found again on a tab. */
  readonly functionName: string;
  readonly formula: (references: References) => string;
  /** Columns of the board that hold days. */
  readonly dayColumns: readonly number[];
  readonly colours: readonly WordColour[];
}

/** Dark ink on a pale ground, 7:1 and more; the word in the column says the same. */
const GROUNDS = {
  calm: { background: "#e4efe6", ink: "#1d4a33" },
  ready: { background: "#f7ecd0", ink: "#594108" },
  urgent: { background: "#f9dfd3", ink: "#6f2607" },
  unknown: { background: "#ececec", ink: "#3f3f3f" },
} as const;

const ROOT_BOARD: BoardSpec = {
  name: "Root board",
  functionName: "ROOT_BOARD",
  formula: ({ plants, log, events, rules, setting }) =>
    `=ROOT_BOARD(${[plants(2), log, setting(TODAY), events, rules].join(", ")})`,
  dayColumns: [4],
  colours: [
    { column: 5, columns: 5, word: REST_WORDS.leave, ...GROUNDS.calm },
    { column: 5, columns: 5, word: REST_WORDS.rested, ...GROUNDS.ready },
    { column: 5, columns: 5, word: REST_WORDS.none, ...GROUNDS.unknown },
  ],
};

const DUE_GROUNDS: Readonly<Record<DueKind, keyof typeof GROUNDS>> = {
  "Top up": "ready",
  Flush: "ready",
  Change: "ready",
  "Pot up": "urgent",
  "Look at": "calm",
  "Look again": "unknown",
};

const DUE_BOARD: BoardSpec = {
  name: "Due board",
  functionName: "POT_DUE",
  formula: ({ plants, log, events, rules, claims, setting }) =>
    `=POT_DUE(${[plants(2), log, setting(TODAY), events, rules, ...(claims === null ? [] : [claims])].join(", ")})`,
  dayColumns: [3],
  colours: Object.entries(DUE_GROUNDS).map(([word, ground]) => ({ column: 2, columns: 4, word, ...GROUNDS[ground] })),
};

export const BOARDS: readonly BoardSpec[] = [ROOT_BOARD, DUE_BOARD];
