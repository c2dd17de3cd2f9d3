/** The lines of a report: how each was understood, what is asked, and a field to correct it. */

import type { JSX } from "preact";
import { EditableLine, ReadingChoice } from "./editable-line.tsx";
import type { WaterDesk } from "./water-desk.ts";
import { closeLine, correctLine, openLine, takeOutLine } from "./water-draft.ts";
import type { TypedLine } from "./water-report.ts";

function Line(props: { readonly desk: WaterDesk; readonly line: TypedLine; readonly open: boolean }): JSX.Element {
  const { desk, line, open } = props;
  const { at, status, text, typed, words } = line;
  const unclear = status === "unclear";
  return (
    <EditableLine
      number={at + 1}
      shown={status === "ask" ? "" : text}
      typed={typed}
      problem={unclear ? words : null}
      open={open}
      onType={(now) => desk.edit((draft) => correctLine(draft, at, now))}
      onOpen={() => desk.edit((now) => openLine(now, at))}
      onClose={() => desk.edit((now) => closeLine(now, at))}
      away="Take out"
      onAway={() => desk.edit((now) => takeOutLine(now, at))}
    >
      {status === "ask" ? (
        <ReadingChoice
          question={words}
          name={`reading-${at}`}
          readings={line.readings.map((reading) => reading.words)}
          chosen={line.chosen}
          onChoose={(chosen) => desk.edit((now) => ({ ...now, answers: { ...now.answers, [text]: chosen } }))}
        />
      ) : (
        !unclear && <p>{words}</p>
      )}
    </EditableLine>
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
