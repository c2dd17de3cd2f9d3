/** "What it leaves short": a feed, a target and a water in; the gaps out, with what fills each. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import { ELEMENT_NAMES } from "../src/core/elements.ts";
import type { Feed } from "../src/core/feeds.ts";
import type { Filler, Gaps } from "../src/core/gaps.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { Shelf } from "./batch-shelf.ts";
import { PURE_WATER } from "./choices.ts";
import type { FeedDesk } from "./feed-desk.ts";
import type { FeedDraft } from "./feed-draft.ts";
import { gapChoice, gapsOf } from "./feed-gaps.ts";
import { SelectField } from "./field.tsx";
import { capital } from "./gauge.ts";
import { showDose } from "./show.ts";

function Fillers(props: { readonly title: string; readonly fillers: readonly Filler[] }): JSX.Element | null {
  const { title, fillers } = props;
  if (fillers.length === 0) return null;
  return (
    <>
      <p class="title">{title}</p>
      <ul class="sentences">
        {fillers.map(({ name, perLitre, unit, reached }) => (
          <li key={name}>
            {capital(name)}, {showDose(perLitre, unit)} in a litre, makes it {sayNumber(reached)} mg/L
          </li>
        ))}
      </ul>
    </>
  );
}

function Found(props: { readonly found: Gaps; readonly name: string }): JSX.Element {
  const { alone, gaps } = props.found;
  const [dose] = alone.doses;
  if (dose === undefined || dose.perLitre === 0)
    return <p class="notice">{capital(props.name)} brings nothing that this target still needs.</p>;
  return (
    <>
      <p>
        Alone it comes closest at {showDose(dose.perLitre, dose.unit)} in a litre.{" "}
        {gaps.length === 0 && "Nothing then stays short by more than 10 %."}
      </p>
      {gaps.map((gap) => (
        <section key={gap.symbol} aria-label={ELEMENT_NAMES[gap.symbol]}>
          <h4>
            {capital(ELEMENT_NAMES[gap.symbol])}: {sayNumber(gap.reached)} of {sayNumber(gap.wanted)} mg/L
          </h4>
          {gap.fillers.length === 0 && <p>Nothing known here fills it without upsetting the rest.</p>}
          <Fillers title="From the shelf" fillers={gap.fillers.filter(({ onShelf }) => onShelf)} />
          <Fillers title="To look for" fillers={gap.fillers.filter(({ onShelf }) => !onShelf)} />
        </section>
      ))}
      {gaps.some(({ fillers }) => fillers.length > 0) && (
        <p class="caution">
          Each dose is for that one beside the feed. Mix a batch works out all of them together and says what may fall
          out. Keep salts from children and pets, nitrates away from anything that burns; follow the product’s label.
        </p>
      )}
    </>
  );
}

export function GapCard(props: {
  readonly desk: FeedDesk;
  readonly draft: FeedDraft;
  readonly shelf: Shelf;
  readonly pasted: Feed | null;
}): JSX.Element | null {
  const { desk, draft, shelf, pasted } = props;
  const { gapFeed, gapTarget, gapWater } = draft;
  const choice = useMemo(() => gapChoice({ gapFeed }, pasted, shelf), [gapFeed, pasted, shelf]);
  const { feed } = choice;
  const found = useMemo(() => gapsOf({ gapTarget, gapWater }, feed, shelf), [gapTarget, gapWater, feed, shelf]);
  if (feed === null || shelf.targets.length === 0) return null;
  const choose = (change: Partial<FeedDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  return (
    <section class="card" aria-labelledby="gap-title">
      <h3 id="gap-title">What a feed leaves short</h3>
      <SelectField
        label="Feed"
        value={choice.key}
        options={choice.options}
        onType={(key) => choose({ gapFeed: key })}
      />
      <SelectField
        label="Target"
        value={gapTarget}
        options={[
          { value: "", words: "Choose" },
          ...shelf.targets.map(({ key, name }) => ({ value: key, words: name })),
        ]}
        onType={(key) => choose({ gapTarget: key })}
      />
      <SelectField
        label="Water"
        value={gapWater === "" ? PURE_WATER.key : gapWater}
        options={shelf.waters.map(({ key, name }) => ({ value: key, words: name }))}
        onType={(key) => choose({ gapWater: key })}
      />
      {typeof found === "string" ? (
        <p class="wrong">{found}</p>
      ) : (
        found !== null && <Found found={found} name={feed.name} />
      )}
    </section>
  );
}
