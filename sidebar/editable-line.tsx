/** One line of a pasted text: what it says and how it was understood, or a field to correct it. */

import type { ComponentChildren, JSX } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { Button } from "./button.tsx";
import { TextField } from "./field.tsx";

export function EditableLine(props: {
  /** From 1. */
  readonly number: number;
  /** The line as text above what is said of it; "" where that quotes it already. */
  readonly shown: string;
  readonly typed: string;
  readonly hint?: string | undefined;
  /** Why it is not understood; then the field is open and stays so. */
  readonly problem: string | null;
  readonly open: boolean;
  readonly onType: (text: string) => void;
  readonly onOpen: () => void;
  readonly onClose: () => void;
  /** What takes the line away: "Take out". */
  readonly away: string;
  readonly onAway: () => void;
  readonly children: ComponentChildren;
}): JSX.Element {
  const { number, shown, problem } = props;
  const place = useRef<HTMLLIElement>(null);
  /** What to put the focus on after the button that was pressed is gone. */
  const next = useRef<string | null>(null);
  useLayoutEffect(() => {
    if (next.current === null) return;
    place.current?.querySelector<HTMLElement>(next.current)?.focus();
    next.current = null;
  });
  return (
    <li ref={place}>
      {!props.open && problem === null && shown !== "" && <p class="typed">{shown}</p>}
      {props.children}
      {props.open || problem !== null ? (
        <>
          <TextField
            label={`Line ${number}`}
            value={props.typed}
            hint={props.hint}
            problem={problem}
            onType={props.onType}
          />
          {problem === null && (
            <Button
              look="link"
              press={() => {
                next.current = ".change button";
                props.onClose();
              }}
            >
              Done<span class="unseen"> with line {number}</span>
            </Button>
          )}{" "}
          <Button look="link" press={props.onAway}>
            {props.away}
            <span class="unseen"> line {number}</span>
          </Button>
        </>
      ) : (
        <span class="change">
          <Button
            look="link"
            press={() => {
              next.current = 'input[type="text"]';
              props.onOpen();
            }}
          >
            Correct<span class="unseen"> line {number}</span>
          </Button>
        </span>
      )}
    </li>
  );
}

/** One question with its readings. */
export function ReadingChoice(props: {
  readonly question: string;
  readonly name: string;
  readonly readings: readonly string[];
  readonly chosen: number | null;
  readonly onChoose: (words: string) => void;
}): JSX.Element {
  return (
    <fieldset>
      <legend>{props.question}</legend>
      {props.readings.map((words, index) => (
        <label class="tick" key={words}>
          <input
            type="radio"
            name={props.name}
            checked={props.chosen === index}
            onChange={() => props.onChoose(words)}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}
