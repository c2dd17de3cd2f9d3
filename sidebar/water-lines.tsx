/** The lines of a report: how each was understood, what is asked, and a field to correct it. */

import type { JSX } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { Button } from "./button.tsx";
import { TextField } from "./field.tsx";
import type { WaterDesk } from "./water-desk.ts";
import { closeLine, correctLine, openLine, takeOutLine } from "./water-draft.ts";
import type { TypedLine } from "./water-report.ts";

function Choices(props: { readonly desk: WaterDesk; readonly line: TypedLine }): JSX.Element {
  const { desk, line } = props;
  return (
    <fieldset>
      <legend>{line.words}</legend>
      {line.readings.map(({ words }, index) => (
        <label class="tick" key={words}>
          <input
            type="radio"
            name={`reading-${line.at}`}
            checked={line.chosen === index}
            onChange={() => desk.edit((now) => ({ ...now, answers: { ...now.answers, [line.text]: words } }))}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Line(props: { readonly desk: WaterDesk; readonly line: TypedLine; readonly open: boolean }): JSX.Element {
  const { desk, line, open } = props;
  const place = useRef<HTMLLIElement>(null);
  /** What to put the focus on after the button that was pressed is gone. */
  const next = useRef<string | null>(null);
  useLayoutEffect(() => {
    if (next.current === null) return;
    place.current?.querySelector<HTMLElement>(next.current)?.focus();
    next.current = null;
  });
  const { at, status, text, typed, words } = line;
  const unclear = status === "unclear";
  return (
    <li ref={place}>
      {!open && status !== "ask" && !unclear && <p class="typed">{text}</p>}
      {status === "ask" ? <Choices desk={desk} line={line} /> : !unclear && <p>{words}</p>}
      {open || unclear ? (
        <>
          <TextField
            label={`Line ${at + 1}`}
            value={typed}
            problem={unclear ? words : null}
            onType={(now) => desk.edit((draft) => correctLine(draft, at, now))}
          />
          {!unclear && (
            <Button
              look="link"
              press={() => {
                next.current = ".change button";
                desk.edit((now) => closeLine(now, at));
              }}
            >
              Done<span class="unseen"> with line {at + 1}</span>
            </Button>
          )}{" "}
          <Button look="link" press={() => desk.edit((now) => takeOutLine(now, at))}>
            Take out<span class="unseen"> line {at + 1}</span>
          </Button>
        </>
      ) : (
        <span class="change">
          <Button
            look="link"
            press={() => {
              next.current = 'input[type="text"]';
              desk.edit((now) => openLine(now, at));
            }}
          >
            Correct<span class="unseen"> line {at + 1}</span>
          </Button>
        </span>
      )}
    </li>
  );
}

/** Few enough to read at a glance. */
const FEW = 6;

export function ReportLines(props: {
  readonly desk: WaterDesk;
  readonly lines: readonly TypedLine[];
  readonly open: readonly number[];
}): JSX.Element | null {
  const { desk, lines, open } = props;
  const passed = lines.filter(({ at, status }) => status === "passed over" && !open.includes(at));
  const kept = lines.filter((line) => !passed.includes(line));
  return (
    <>
      {kept.length > 0 && (
        <ul class="report" aria-label="Lines as they are understood">
          {kept.map((line) => (
            <Line key={line.at} desk={desk} line={line} open={open.includes(line.at)} />
          ))}
        </ul>
      )}
      {passed.length > 0 && (
        <details class="quiet" open={passed.length <= FEW}>
          <summary>Passed over: {passed.length === 1 ? "1 line" : `${passed.length} lines`}</summary>
          <ul class="report" aria-label="Lines passed over">
            {passed.map((line) => (
              <Line key={line.at} desk={desk} line={line} open={false} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
