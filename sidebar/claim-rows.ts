/** Claims as the panel shows them, from the rows of the sheet. */

import type { ClaimEntry, FieldRow } from "../src/app/contract.ts";
import { CLAIM_STATES } from "../src/app/requests.ts";

export type ClaimState = ClaimEntry["status"];

export interface Claim {
  /** "" in a row typed by hand; such a one is changed on its tab. */
  readonly id: string;
  readonly row: number;
  readonly claim: string;
  readonly heardFrom: string;
  readonly yearsAtIt: number | null;
  readonly theirSetup: string;
  readonly ourSetup: string;
  readonly agrees: string;
  readonly differs: string;
  readonly status: ClaimState;
  /** ISO days, "" for none. */
  readonly heardOn: string;
  readonly lookAgain: string;
  readonly trial: string;
  readonly outcome: string;
  readonly note: string;
  readonly who: string;
}

/** What each state means here, in words. */
export const STATE_WORDS: Readonly<Record<ClaimState, string>> = {
  heard: "heard, not tried",
  trying: "being tried",
  kept: "kept",
  dropped: "dropped",
};

export function textIn({ fields }: FieldRow, heading: string): string {
  const value = fields[heading];
  return value === undefined ? "" : String(value).trim();
}

/** An id that this panel can name in a request. */
export function isId(text: string): boolean {
  return /^[a-z0-9-]{8,64}$/.test(text);
}

export function readClaims(rows: readonly FieldRow[]): Claim[] {
  return rows.flatMap((row) => {
    const claim = textIn(row, "Claim");
    if (claim === "") return [];
    const years = row.fields["Years at it"];
    const status = textIn(row, "Status");
    return [
      {
        id: textIn(row, "Id"),
        row: row.row,
        claim,
        heardFrom: textIn(row, "Heard from"),
        yearsAtIt: typeof years === "number" ? years : null,
        theirSetup: textIn(row, "Their setup"),
        ourSetup: textIn(row, "Our setup"),
        agrees: textIn(row, "Agrees"),
        differs: textIn(row, "Differs"),
        status: CLAIM_STATES.find((state) => state === status.toLowerCase()) ?? "heard",
        heardOn: textIn(row, "Heard on"),
        lookAgain: textIn(row, "Look again"),
        trial: textIn(row, "Trial"),
        outcome: textIn(row, "What came of it"),
        note: textIn(row, "Note"),
        who: textIn(row, "Who"),
      },
    ];
  });
}

/** Its day to think about it again has come. */
export function isDue({ lookAgain }: Claim, today: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(lookAgain) && lookAgain <= today;
}

/** Those due first, then those being tried, heard, kept and dropped; newest rows first within. */
export function sortClaims(claims: readonly Claim[], today: string): Claim[] {
  const order: readonly ClaimState[] = ["trying", "heard", "kept", "dropped"];
  const rank = (claim: Claim) => (isDue(claim, today) ? -1 : order.indexOf(claim.status));
  return [...claims].sort((a, b) => rank(a) - rank(b) || b.row - a.row);
}

/** The row as the sheet will have it, to be shown until it is read again. */
export function claimRow(entry: ClaimEntry, who: string, row: number): FieldRow {
  const { yearsAtIt, heardOn, lookAgain } = entry;
  const texts: readonly (readonly [string, string | null])[] = [
    ["Id", entry.id],
    ["Claim", entry.claim],
    ["Heard from", entry.heardFrom],
    ["Their setup", entry.theirSetup],
    ["Our setup", entry.ourSetup],
    ["Agrees", entry.agrees],
    ["Differs", entry.differs],
    ["Status", entry.status],
    ["Heard on", heardOn],
    ["Look again", lookAgain],
    ["Trial", entry.trial],
    ["What came of it", entry.outcome],
    ["Who", who],
    ["Note", entry.note],
    ["Corrects", entry.corrects ?? ""],
  ];
  const fields: FieldRow["fields"] = {};
  for (const [heading, text] of texts) if (text !== null && text !== "") fields[heading] = text;
  if (yearsAtIt !== null) fields["Years at it"] = yearsAtIt;
  return { row, fields };
}

/** The rows once the new one is below them; the one it replaces is gone. */
export function withClaim(rows: readonly FieldRow[], entry: ClaimEntry, who: string): FieldRow[] {
  if (rows.some((row) => textIn(row, "Id") === entry.id)) return [...rows];
  const last = 1 + Math.max(1, ...rows.map(({ row }) => row));
  const standing = rows.filter((row) => entry.corrects === undefined || textIn(row, "Id") !== entry.corrects);
  return [...standing, claimRow(entry, who, last)];
}
