/** The lines of a label: how each was understood, what is asked, a field to correct it, a way to leave it out. */

import type { JSX } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { Button } from "./button.tsx";
import type { FeedDesk } from "./feed-desk.ts";
import { bringBack, closeLine, correctLine, leaveOut, openLine } from "./feed-draft.ts";
import type { TypedLabel, TypedLine, TypedQuestion } from "./feed-label.ts";
import { sayFields } from "./feed-words.ts";
import { TextField } from "./field.tsx";
import { count } from "./show.ts";

function Question(props: { readonly desk: FeedDesk; readonly of: TypedQuestion; readonly name: string }): JSX.Element {
  const { desk, of, name } = props;
  return (
    <fieldset>
      <legend>{of.question}</legend>
      {of.choices.map(({ words }, index) => (
        <label class="tick" key={words}>
          <input
            type="radio"
            name={name}
            checked={of.chosen === index}
            onChange={() => desk.edit((now) => ({ ...now, answers: { ...now.answers, [of.key]: words } }))}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}

function understood({ outcome, fields, sentence }: TypedLine): string {
  const said = sayFields(fields);
  if (outcome === "passed over") return sentence;
  return said === "" ? sentence : said;
}

function Line(props: { readonly desk: FeedDesk; readonly line: TypedLine; readonly open: boolean }): JSX.Element {
  const { desk, line, open } = props;
  const place = useRef<HTMLLIElement>(null);
  /** What to put the focus on after the button that was pressed is gone. */
  const next = useRef<string | null>(null);
  useLayoutEffect(() => {
    if (next.current === null) return;
    place.current?.querySelector<HTMLElement>(next.current)?.focus();
    next.current = null;
  });
  const { number, outcome, text, pasted, questions } = line;
  const unclear = outcome === "not understood";
  const words = understood(line);
  return (
    <li ref={place}>
      {!open && !unclear && <p class="typed">{text}</p>}
      {!unclear && words !== "" && <p>{words}</p>}
      {questions.map((question, at) => (
        <Question key={question.key} desk={desk} of={question} name={`label-${number}-${at}`} />
      ))}
      {open || unclear ? (
        <>
          <TextField
            label={`Line ${number}`}
            value={text}
            hint={text.trim() === pasted.trim() ? undefined : `Pasted as: ${pasted.trim()}`}
            problem={unclear ? `Not understood. ${words}` : null}
            onType={(now) => desk.edit((draft) => correctLine(draft, number, now))}
          />
          {!unclear && (
            <Button
              look="link"
              press={() => {
                next.current = ".change button";
                desk.edit((now) => closeLine(now, number));
              }}
            >
              Done<span class="unseen"> with line {number}</span>
            </Button>
          )}{" "}
          <Button look="link" press={() => desk.edit((now) => leaveOut(now, [number]))}>
            Leave out<span class="unseen"> line {number}</span>
          </Button>
        </>
      ) : (
        <span class="change">
          <Button
            look="link"
            press={() => {
              next.current = 'input[type="text"]';
              desk.edit((now) => openLine(now, number));
            }}
          >
            Correct<span class="unseen"> line {number}</span>
          </Button>
        </span>
      )}
    </li>
  );
}

/** Few enough to read at a glance. */
const FEW = 4;

function Aside(props: { readonly desk: FeedDesk; readonly lines: readonly TypedLine[] }): JSX.Element | null {
  const { desk, lines } = props;
  if (lines.length === 0) return null;
  return (
    <details class="quiet" open={lines.length <= FEW}>
      <summary>Without an amount: {count(lines.length, "line")}</summary>
      <ul class="report" aria-label="Lines without an amount">
        {lines.map((line) => (
          <Line key={line.number} desk={desk} line={line} open={false} />
        ))}
      </ul>
    </details>
  );
}

function LeftOut(props: { readonly desk: FeedDesk; readonly lines: TypedLabel["leftOut"] }): JSX.Element | null {
  const { desk, lines } = props;
  if (lines.length === 0) return null;
  return (
    <details class="quiet">
      <summary>Left out by you: {count(lines.length, "line")}</summary>
      <ul class="report" aria-label="Lines left out">
        {lines.map(({ number, pasted }) => (
          <li key={number}>
            <p class="typed">{pasted}</p>
            <span class="change">
              <Button look="link" press={() => desk.edit((now) => bringBack(now, number))}>
                Bring back<span class="unseen"> line {number}</span>
              </Button>
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}

export function LabelLines(props: {
  readonly desk: FeedDesk;
  readonly label: TypedLabel;
  readonly open: readonly number[];
}): JSX.Element {
  const { desk, label, open } = props;
  const { lines, unclear } = label;
  const aside = lines.filter(({ number, outcome }) => outcome === "passed over" && !open.includes(number));
  const kept = lines.filter((line) => !aside.includes(line));
  return (
    <>
      {kept.length > 0 && (
        <ul class="report" aria-label="Lines as they are understood">
          {kept.map((line) => (
            <Line key={line.number} desk={desk} line={line} open={open.includes(line.number)} />
          ))}
        </ul>
      )}
      {unclear.length > 1 && (
        <Button look="second" press={() => desk.edit((now) => leaveOut(now, unclear))}>
          Leave out the {unclear.length} lines not understood
        </Button>
      )}
      <Aside desk={desk} lines={aside} />
      <LeftOut desk={desk} lines={label.leftOut} />
    </>
  );
}
