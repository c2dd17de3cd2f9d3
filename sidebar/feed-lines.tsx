/** The lines of a label: how each was understood, what is asked, a field to correct it, a way to leave it out. */

import type { JSX } from "preact";
import { Button } from "./button.tsx";
import { EditableLine, ReadingChoice } from "./editable-line.tsx";
import type { FeedDesk } from "./feed-desk.ts";
import { bringBack, closeLine, correctLine, leaveOut, openLine } from "./feed-draft.ts";
import type { TypedLabel, TypedLine } from "./feed-label.ts";
import { sayFields } from "./feed-words.ts";
import { count } from "./show.ts";

function understood({ outcome, fields, sentence }: TypedLine): string {
  const said = sayFields(fields);
  if (outcome === "passed over") return sentence;
  return said === "" ? sentence : said;
}

function Line(props: { readonly desk: FeedDesk; readonly line: TypedLine; readonly open: boolean }): JSX.Element {
  const { desk, line, open } = props;
  const { number, outcome, text, pasted, questions } = line;
  const unclear = outcome === "not understood";
  const words = understood(line);
  return (
    <EditableLine
      number={number}
      shown={text}
      typed={text}
      hint={text.trim() === pasted.trim() ? undefined : `Pasted as: ${pasted.trim()}`}
      problem={unclear ? `Not understood. ${words}` : null}
      open={open}
      onType={(now) => desk.edit((draft) => correctLine(draft, number, now))}
      onOpen={() => desk.edit((now) => openLine(now, number))}
      onClose={() => desk.edit((now) => closeLine(now, number))}
      away="Leave out"
      onAway={() => desk.edit((now) => leaveOut(now, [number]))}
    >
      {!unclear && words !== "" && <p>{words}</p>}
      {questions.map((question, at) => (
        <ReadingChoice
          key={question.key}
          question={question.question}
          name={`label-${number}-${at}`}
          readings={question.choices.map((choice) => choice.words)}
          chosen={question.chosen}
          onChoose={(chosen) => desk.edit((now) => ({ ...now, answers: { ...now.answers, [question.key]: chosen } }))}
        />
      ))}
    </EditableLine>
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
