/** Back home: what the page asked for and what the log says was done, in sentences. */

import type { Loaded } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { fillKind } from "../src/core/fills.ts";
import { sayNumber } from "../src/core/saying.ts";
import { type Compared, compareSitting } from "../src/core/sitter.ts";
import { count } from "./show.ts";
import { careRows, rulesOfEvents } from "./sitter-draft.ts";
import { dayWords } from "./sitter-page.ts";
import type { ReadPage } from "./sitter-tab.ts";

export interface Checked {
  readonly summary: string;
  readonly parts: readonly { readonly title: string; readonly sentences: readonly string[] }[];
}

const SHOWN = 12;
/** Another amount than about that much: more than a quarter and more than a small splash. Common practice, no source. */
const OTHER_SHARE = 0.25;
const OTHER_ML = 30;

function bounded(sentences: readonly string[]): readonly string[] {
  return sentences.length <= SHOWN
    ? sentences
    : [...sentences.slice(0, SHOWN), `And ${sentences.length - SHOWN} more.`];
}

const by = (who: string): string => (who === "" ? "" : ` by ${who}`);

function otherAmount({ planned, done }: Compared): string | null {
  const [asked, poured] = [planned.amountMl, done?.amountMl ?? null];
  if (asked === null || poured === null) return null;
  const apart = Math.abs(poured - asked);
  if (apart <= OTHER_ML || apart <= OTHER_SHARE * asked) return null;
  return `${planned.plant}, ${dayWords(planned.day)}: ${sayNumber(poured)} mL were poured where about ${sayNumber(asked)} mL were on the page.`;
}

function sayDone(lines: number, done: number): string {
  const missing = lines - done;
  const rest = missing === 0 ? ", so everything was done" : ` and ${missing} ${missing === 1 ? "is" : "are"} not`;
  return `Of ${count(lines, "line")} on the page, ${done} ${done === 1 ? "is" : "are"} in the log${rest}.`;
}

export function checkSitting(page: ReadPage, loaded: Loaded): Checked {
  const events = rulesOfEvents(loaded);
  const fills = ({ event }: { readonly event: string }): boolean => {
    const kind = fillKind(event, events);
    return kind !== null && kind !== "disturbance";
  };
  const today = dayFromIso(loaded.today) ?? page.toDay;
  const until = page.lines.filter(({ day }) => day <= today);
  const toCome = page.lines.length - until.length;
  const { lines, besides } = compareSitting(until, careRows(loaded), { ...page, fills });
  const missing = lines.filter(({ done }) => done === null);
  const ticked = (planned: Compared["planned"]): string =>
    page.lines.find(({ day, plant, done }) => done !== "" && day === planned.day && plant === planned.plant)?.done ??
    "";
  const done = lines.length - missing.length;
  const parts = [
    {
      title: "On the page, not in the log",
      sentences: missing.map(({ planned }) => {
        const word = ticked(planned);
        const amount = planned.amountMl === null ? "" : `, about ${sayNumber(planned.amountMl)} mL`;
        return `${planned.plant}, ${dayWords(planned.day)}${amount}.${word === "" ? "" : ` Under Done stands “${word}”.`}`;
      }),
    },
    {
      title: "Done on another day",
      sentences: lines.flatMap(({ planned, done: found }) =>
        found === null || found.day === planned.day
          ? []
          : [`${planned.plant}: planned for ${dayWords(planned.day)}, done on ${dayWords(found.day)}${by(found.who)}.`],
      ),
    },
    {
      title: "Another amount",
      sentences: lines.flatMap((line) => otherAmount(line) ?? []),
    },
    {
      title: "In the log, not on the page",
      sentences: besides.map(
        ({ plant, event, day, amountMl, who }) =>
          `${plant}: ${event} on ${dayWords(day)}${amountMl === null ? "" : `, ${sayNumber(amountMl)} mL`}${by(who)}.`,
      ),
    },
  ];
  return {
    summary: [
      lines.length === 0 ? "" : sayDone(lines.length, done),
      toCome === 0 ? "" : `${count(toCome, "line")} ${toCome === 1 ? "is" : "are"} still to come.`,
    ]
      .filter((sentence) => sentence !== "")
      .join(" "),
    parts: parts
      .filter(({ sentences }) => sentences.length > 0)
      .map((part) => ({ ...part, sentences: bounded(part.sentences) })),
  };
}
