/** "Keep stock": what is on hand and how long it lasts, and a form for what came onto the shelf or left it. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { Loaded, Records } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { sayGiven } from "../src/core/saying.ts";
import { SUPPLY_UNITS } from "../src/core/supply.ts";
import { Button } from "./button.tsx";
import { DateAndNote } from "./date-and-note.tsx";
import { SelectField, TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { count } from "./show.ts";
import { type Purchase, readPurchases, type StockLine, stockOf } from "./stock.ts";
import { type StockDraft, stockNumbers, unitOf } from "./stock-draft.ts";
import { purchaseWords, stockWords } from "./stock-words.ts";
import { useStore } from "./use-store.ts";
import { WhoCard } from "./who.tsx";
import { WithRecords } from "./with-records.tsx";

function OnHand(props: { readonly lines: readonly StockLine[] }): JSX.Element {
  const words = props.lines.map((line) => ({ line, said: stockWords(line) }));
  const counted = words.filter(({ said }) => said.counted);
  const others = words.filter(({ said }) => !said.counted);
  return (
    <>
      {counted.length === 0 && (
        <p class="empty">No purchase is on record yet. Log what stands on the shelf now, and the log does the rest.</p>
      )}
      <ul class="report" aria-label="On hand">
        {counted.map(({ line, said }) => (
          <li key={line.feed}>
            <p class="title">{line.feed}</p>
            {said.amount !== "" && (
              <p class="change">
                <strong>{said.amount}</strong>
              </p>
            )}
            <p class={said.warns ? "notice" : ""}>{said.sentence}</p>
            {line.lot !== "" && <p class="hint">Lot {line.lot}</p>}
          </li>
        ))}
      </ul>
      {others.length > 0 && (
        <details class="quiet">
          <summary>Without a purchase on record: {others.length}</summary>
          <ul class="sentences">
            {others.map(({ line, said }) => (
              <li key={line.feed}>{said.sentence}</li>
            ))}
          </ul>
        </details>
      )}
      <p class="hint">Bought less what the batches of the log used; planned batches not yet.</p>
    </>
  );
}

const WAYS: readonly { readonly way: StockDraft["way"]; readonly words: string }[] = [
  { way: "came", words: "It came onto the shelf" },
  { way: "left", words: "It was spilled, given or thrown away" },
];

function Form(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  readonly purchases: readonly Purchase[];
}): JSX.Element {
  const { panel, loaded, purchases } = props;
  const desk = panel.stock;
  const draft = useStore(desk.draft);
  const unit = unitOf(draft, purchases);
  const numbers = stockNumbers(draft, unit);
  const type = (change: Partial<StockDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  const names = loaded.feeds.map(({ fields }) => String(fields.Feed ?? "").trim()).filter((name) => name !== "");
  const came = draft.way === "came";
  return (
    <>
      <SelectField
        label="Feed"
        value={draft.feed}
        options={[{ value: "", words: "Choose" }, ...names.map((name) => ({ value: name, words: name }))]}
        onType={(feed) => type({ feed, unit: "" })}
      />
      <fieldset>
        <legend>What happened</legend>
        {WAYS.map(({ way, words }) => (
          <label class="tick" key={way}>
            <input type="radio" name="way" checked={draft.way === way} onChange={() => type({ way })} />
            <span>{words}</span>
          </label>
        ))}
      </fieldset>
      <div class="pair">
        <TextField
          label="Amount"
          number
          value={draft.amount}
          problem={numbers.amount.problem}
          onType={(amount) => type({ amount })}
        />
        <SelectField
          label="Unit"
          value={unit}
          options={[
            ...(unit === "" ? [{ value: "", words: "Choose" }] : []),
            ...SUPPLY_UNITS.map((one) => ({ value: one as string, words: one as string })),
          ]}
          onType={(chosen) => type({ unit: SUPPLY_UNITS.find((one) => one === chosen) ?? "" })}
        />
      </div>
      {came && (
        <div class="pair">
          <TextField
            label="Price of the pack"
            number
            value={draft.price}
            problem={numbers.price.problem}
            onType={(price) => type({ price })}
          />
          <TextField label="Lot" value={draft.lot} onType={(lot) => type({ lot })} />
        </div>
      )}
      <DateAndNote draft={draft} today={loaded.today} type={type} />
      <WhoCard panel={panel} />
      <Send
        sender={desk.sender}
        label={came ? "Log this purchase" : "Log that it left"}
        working="Saving to Purchases…"
        primary
      />
    </>
  );
}

const ROWS_SHOWN = 8;

/** The newest rows; those of the person at the panel can be taken back where they can be found again. */
function Rows(props: {
  readonly panel: Panel;
  readonly purchases: readonly Purchase[];
  readonly who: string;
}): JSX.Element | null {
  const { panel, purchases, who } = props;
  const { sender, row } = panel.stock.takeBack;
  const sent = useStore(sender.now);
  if (purchases.length === 0) return null;
  const newest = [...purchases].reverse().sort((a, b) => (b.day ?? 0) - (a.day ?? 0));
  const own = (one: Purchase) => nameKey(one.who) === nameKey(who) && /^[a-z0-9-]{8,64}$/.test(one.id);
  return (
    <>
      <details class="quiet">
        <summary>On record: {count(purchases.length, "purchase")}</summary>
        <ul class="report" aria-label="Newest purchases">
          {newest.slice(0, ROWS_SHOWN).map((one) => (
            <li key={one.row}>
              <p class="typed">{purchaseWords(one)}</p>
              {own(one) && (
                <span class="change">
                  <Button look="link" busy={sent.state === "under way"} press={() => row(one.id)}>
                    Take back
                    <span class="unseen">
                      {" "}
                      {sayGiven(one.amount)} {one.unit} of {one.feed}
                    </span>
                  </Button>
                </span>
              )}
            </li>
          ))}
        </ul>
        {newest.length > ROWS_SHOWN && <p class="hint">Older ones stand on the Purchases tab.</p>}
      </details>
      <Send sender={sender} label="Try again" working="Taking it back…" hidden={sent.state !== "failed"} />
    </>
  );
}

function Body(props: { readonly panel: Panel; readonly loaded: Loaded; readonly records: Records }): JSX.Element {
  const { panel, loaded, records } = props;
  const lines = useMemo(() => stockOf(loaded, records), [loaded, records]);
  const { purchases } = useMemo(() => readPurchases(records.purchases), [records.purchases]);
  return (
    <>
      <h3>On hand</h3>
      <OnHand lines={lines} />
      <h3>Log what came or left</h3>
      <Form panel={panel} loaded={loaded} purchases={purchases} />
      <Rows panel={panel} purchases={purchases} who={loaded.who} />
      <h3>In the sheet</h3>
      <p>The column On hand of the Feeds tab can count by itself, with one formula in its heading.</p>
      <Send sender={panel.stock.inSheet} label="Count it there too" working="Writing the formula…" />
    </>
  );
}

export function StockSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  return (
    <WithRecords panel={props.panel}>
      {(records) => <Body panel={props.panel} loaded={props.loaded} records={records} />}
    </WithRecords>
  );
}
