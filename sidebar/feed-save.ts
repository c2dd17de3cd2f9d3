/** The row that a pasted label becomes: the request for it, or the sentence that says what is missing. */

import type { RequestFor } from "../src/app/contract.ts";
import { LABEL_TERMS } from "../src/core/analysis.ts";
import { readShelfFeed } from "../src/core/feeds.ts";
import { MOST_LINES } from "../src/core/label-text.ts";
import type { FeedDraft } from "./feed-draft.ts";
import { rowOfLabel, type TypedLabel } from "./feed-label.ts";

/** A cell holds 50,000 characters; no label comes near this. */
const MOST_LABEL_TEXT = 20_000;

/** What is still to be asked or mended before there is a feed; null when nothing is. */
function missing(draft: FeedDraft, label: TypedLabel): string | null {
  const lines = draft.text.split(/\r\n|\r|\n/).length;
  if (draft.text.length > MOST_LABEL_TEXT || lines > MOST_LINES)
    return "That is too long for a label. Paste the analysis alone.";
  if (!draft.noAnalysis) {
    if (label.lines.length === 0) return "Paste the analysis, or tick that none is printed.";
    const asked = label.lines.find(({ questions }) => questions.some(({ chosen }) => chosen === null));
    if (asked !== undefined) return `Choose what “${asked.text.trim()}” means first.`;
    const unclear = label.lines.find(({ outcome }) => outcome === "not understood");
    if (unclear !== undefined)
      return `“${unclear.text.trim()}” is not understood. Correct that line, or leave it out if it holds no amount.`;
    if (label.asks.basis && draft.basis === "") return "Choose what the percents count: weight or volume.";
    if (label.refused !== "") return label.refused;
    if (label.form === "") return "Choose whether it is a solid or a liquid.";
    if (label.asks.density && label.density.problem !== null) return label.density.problem;
  }
  if (draft.origin === "") return "Choose what it is made of.";
  return draft.name.trim() === "" ? "Type a name for this feed." : null;
}

/** Why the feed as it is now stays on the shelf and enters no recipe; null when it may enter one. */
export function reasonOf(draft: FeedDraft, label: TypedLabel): string | null {
  const row = rowOfLabel(draft, label);
  return readShelfFeed({ ...row, Feed: row.Feed || "This feed" }, "this label").reason;
}

/** A feed of that name on the tab is the sheet's to find: it knows a retry of this press from another feed. */
export function makeFeed(draft: FeedDraft, label: TypedLabel): RequestFor<"log feed"> | string {
  const first = missing(draft, label);
  if (first !== null || draft.origin === "") return first ?? "";
  const name = draft.name.trim();
  const row = rowOfLabel(draft, label);
  // Organic and unpublished ones are kept for the shelf; any other feed has to be one that can be dosed.
  if (draft.origin === "mineral" && !draft.noAnalysis) {
    const { reason } = readShelfFeed(row, "this label");
    if (reason !== null) return reason;
  }
  const percents: Partial<Record<(typeof LABEL_TERMS)[number], number>> = {};
  for (const term of LABEL_TERMS) {
    const value = row[term];
    if (typeof value === "number") percents[term] = value;
  }
  const { Basis: basis, Density: density } = row;
  return {
    ask: "log feed",
    entry: {
      id: draft.id,
      feed: name,
      basis: basis === "w/v" ? "w/v" : basis === "w/w" ? "w/w" : "",
      percents,
      densityGPerMl: typeof density === "number" ? density : null,
      origin: draft.origin,
      published: !draft.noAnalysis,
      labelText: draft.text,
      note: draft.note.trim(),
    },
  };
}
