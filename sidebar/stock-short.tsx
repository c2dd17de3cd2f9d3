/** Under the doses of a batch: feeds of which it takes more than there is on the shelf. */

import type { JSX } from "preact";
import type { Worked } from "./batch.ts";
import type { Shelf } from "./batch-shelf.ts";
import { showDose } from "./show.ts";

/** A sentence for each feed that will not do; none where nobody can say how much is left. */
export function shortOf(
  { lines, feeds }: Pick<Worked, "lines" | "feeds">,
  { onHandOf }: Pick<Shelf, "onHandOf">,
): string[] {
  return lines.flatMap(({ feed: name, perBatch, unit }) => {
    const feed = feeds.find((one) => one.name === name);
    const onHand = feed === undefined ? null : onHandOf(feed);
    if (onHand === null || perBatch === null || perBatch <= Math.max(onHand, 0) * (1 + 1e-9)) return [];
    const left = onHand > 0 ? `only ${showDose(onHand, unit)} are` : "nothing is";
    return [`This batch takes ${showDose(perBatch, unit)} of ${name}, but ${left} on hand by Purchases and the log.`];
  });
}

export function StockShort(props: { readonly worked: Worked; readonly shelf: Shelf }): JSX.Element | null {
  const short = shortOf(props.worked, props.shelf);
  if (short.length === 0) return null;
  return (
    <div class="notice">
      {short.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
