/** Waters side by side, a row for each line. */

import type { JSX } from "preact";
import { sayNumber } from "../src/core/saying.ts";
import { LINE_UNITS, WATER_LINES, type WaterLines } from "../src/core/water-lines.ts";

export function WaterTable(props: {
  readonly caption: string;
  readonly waters: readonly { readonly heading: string; readonly lines: WaterLines }[];
}): JSX.Element {
  const { caption, waters } = props;
  const shown = WATER_LINES.filter((line) => waters.some(({ lines }) => lines[line] !== undefined));
  return (
    <table class="doses waters">
      <caption>{caption} (mg/L where no unit stands)</caption>
      <thead>
        <tr>
          <th scope="col">Line</th>
          {waters.map(({ heading }) => (
            <th scope="col" key={heading}>
              {heading}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {shown.map((line) => (
          <tr key={line}>
            <th scope="row">
              {line}
              {LINE_UNITS[line] !== "" && LINE_UNITS[line] !== "mg/L" && <small>{LINE_UNITS[line]}</small>}
            </th>
            {waters.map(({ heading, lines }) => {
              const value = lines[line];
              return (
                <td key={heading}>
                  {value === undefined ? (
                    <>
                      <span aria-hidden="true">?</span>
                      <span class="unseen">not known</span>
                    </>
                  ) : line === "pH" ? (
                    value.toFixed(1)
                  ) : (
                    sayNumber(value)
                  )}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
