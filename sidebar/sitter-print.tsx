/** The sitter's page on paper: nothing on the screen, the only thing when the panel is printed. */

import type { JSX } from "preact";
import { dayWords, type PageLine, type SitterPage } from "./sitter-page.ts";
import { NOTHING_TO_DO } from "./sitter-tab.ts";

function rooms(lines: readonly PageLine[]): readonly (readonly [room: string, lines: readonly PageLine[]])[] {
  const byRoom = new Map<string, PageLine[]>();
  for (const line of lines) byRoom.set(line.room, [...(byRoom.get(line.room) ?? []), line]);
  return [...byRoom];
}

function DayTable(props: { readonly day: number; readonly lines: readonly PageLine[] }): JSX.Element {
  return (
    <table>
      <caption>{dayWords(props.day)}</caption>
      <thead>
        <tr>
          <th scope="col">Plant</th>
          <th scope="col">What to do</th>
          <th scope="col">About</th>
          <th scope="col">Done</th>
        </tr>
      </thead>
      {props.lines.length === 0 && (
        <tbody>
          <tr>
            <td colSpan={3}>{NOTHING_TO_DO}</td>
            <td />
          </tr>
        </tbody>
      )}
      {rooms(props.lines).map(([room, lines]) => (
        <tbody key={room}>
          <tr>
            <th scope="rowgroup" colSpan={4}>
              {room === "" ? "No room named" : room}
            </th>
          </tr>
          {lines.map(({ plant, what, aboutMl }) => (
            <tr key={plant}>
              <td>{plant}</td>
              <td>{what}</td>
              <td>{aboutMl === null ? "as it takes" : `${aboutMl} mL`}</td>
              <td />
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  );
}

export function SitterPrint(props: { readonly page: SitterPage }): JSX.Element {
  const { title, intro, pouring, care, days } = props.page;
  return (
    <article class="paper">
      <h1>{title}</h1>
      {intro.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <h2>What to pour</h2>
      {pouring.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <h2>Take care</h2>
      <ul>
        {care.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {days.map(({ day, lines }) => (
        <DayTable key={day} day={day} lines={lines} />
      ))}
    </article>
  );
}
