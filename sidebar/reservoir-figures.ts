/** The figures of the salt card: what was typed, else what the log says, each with where it comes from. */

import type { Loaded } from "../src/app/contract.ts";
import { sayNumber } from "../src/core/saying.ts";
import { meterOf, typedEc, unitOf } from "./meter.ts";
import type { Figure, ReservoirDraft } from "./reservoir-draft.ts";
import type { ReservoirLog } from "./reservoir-log.ts";
import type { Pot } from "./reservoir-pot.ts";
import type { Poured } from "./reservoir-poured.ts";
import { RESERVOIR_SHARE, type SaltFigures, type SaltLog } from "./reservoir-salt.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface FigureField {
  /** What was typed, read. */
  readonly typed: Typed;
  /** What counts when nothing is typed; null for nothing known. */
  readonly otherwise: number | null;
  /** Where that comes from, as a hint under the label. */
  readonly hint: string;
}

export interface Figures {
  readonly fields: Readonly<Record<Figure, FigureField>>;
  /** Null while a figure is missing or cannot be read. */
  readonly figures: SaltFigures | null;
  /** What to type first; null when nothing is missing. */
  readonly missing: string | null;
}

/** A ceiling for the reservoir of a foliage plant when Settings say "off": common practice, no source. */
const CEILING_MS_CM = 2;

function fieldOf(typed: Typed, otherwise: number | null, hint: string): FigureField {
  return { typed, otherwise, hint: otherwise === null ? hint : `${sayNumber(otherwise)} when left empty: ${hint}` };
}

const FIRST: readonly (readonly [Figure, string])[] = [
  ["volumeMl", "Type how much the reservoir holds."],
  ["fillEc", "Type the EC it was filled with."],
  ["topUpEc", "Type the EC it is topped up with."],
  ["plainEc", "Type the EC of your plain water."],
];

export interface FigureTask {
  readonly draft: ReservoirDraft;
  readonly loaded: Loaded;
  readonly log: ReservoirLog;
  readonly pot: Pot;
  readonly salt: SaltLog;
  /** The water with the lowest EC on the Waters tab; null where none states one. */
  readonly plain: (Poured & { readonly water: string }) | null;
}

export function figuresOf({ draft, loaded, log, pot, salt, plain }: FigureTask): Figures {
  const meter = meterOf(loaded);
  const text = draft.figures;
  const ec = (figure: Figure, what: string) => typedNumber(text[figure], { what, unit: "mS/cm", min: 0, max: 20 });
  const useMlDay = pot.state?.useMlDay ?? null;
  const usualMl = pot.state?.usualMl ?? null;
  const gap =
    useMlDay === null || usualMl === null || useMlDay === 0 ? null : Math.max(1, Math.round(usualMl / useMlDay));
  const share = `${Math.round(100 * RESERVOIR_SHARE)} % of the pot, common practice, no source. Better: measure it once with a jug.`;
  const measured = salt.measured;
  const fields: Record<Figure, FigureField> = {
    volumeMl: fieldOf(
      typedNumber(text.volumeMl, { what: "Reservoir", unit: "mL", min: 10, max: 100_000 }),
      salt.volumeMl,
      salt.volumeMl === null ? "The plant list has no Pot mL for it." : share,
    ),
    fillEc: fieldOf(
      ec("fillEc", "Filled with"),
      salt.fill.ecMsCm,
      salt.fill.ecMsCm === null ? "The log does not name a batch or water with an EC." : "as the log says.",
    ),
    topUpEc: fieldOf(
      ec("topUpEc", "Topped up with"),
      salt.lastTopUp.ecMsCm ?? salt.fill.ecMsCm,
      salt.lastTopUp.ecMsCm !== null
        ? "its last top-up."
        : salt.fill.ecMsCm !== null
          ? "what it was filled with."
          : "The log does not say.",
    ),
    measuredEc: {
      typed: typedEc(text.measuredEc, unitOf(meter, draft.ecUnit), meter),
      otherwise: measured?.ecMsCm ?? null,
      hint: "Measure after topping up, stirred.",
    },
    plainEc: fieldOf(
      ec("plainEc", "Plain water"),
      plain?.ecMsCm ?? null,
      plain === null ? "No water on the Waters tab has an EC." : `${plain.water}.`,
    ),
    ceiling: fieldOf(
      ec("ceiling", "Ceiling"),
      log.rules.ecCeilingMsCm ?? CEILING_MS_CM,
      "from Settings, common practice, no source.",
    ),
    everyDays: fieldOf(
      typedNumber(text.everyDays, { what: "Days between top-ups", unit: "days", min: 1, max: 60 }),
      gap,
      gap === null ? "How fast it drinks is not known yet." : "its own pace.",
    ),
  };
  const value = (figure: Figure): number | null => fields[figure].typed.value ?? fields[figure].otherwise;
  const wrong = Object.values(fields).find(({ typed }) => typed.problem !== null)?.typed.problem ?? null;
  const missing =
    wrong ??
    (useMlDay === null ? "How fast it drinks is told by its next top-up with an amount." : null) ??
    FIRST.find(([figure]) => value(figure) === null)?.[1] ??
    null;
  if (missing !== null || useMlDay === null) return { fields, figures: null, missing };
  const typedMeasured = fields.measuredEc.typed.value;
  return {
    fields,
    missing: null,
    figures: {
      volumeMl: value("volumeMl") as number,
      fillEc: value("fillEc") as number,
      topUpEc: value("topUpEc") as number,
      plainEc: value("plainEc") as number,
      ceiling: value("ceiling") as number,
      everyDays: Math.round(value("everyDays") ?? 7),
      useMlDay,
      measured: typedMeasured !== null ? { day: log.today, ecMsCm: typedMeasured } : measured,
    },
  };
}

/** The water with the lowest EC on the Waters tab. */
export function plainWater(loaded: Loaded): FigureTask["plain"] {
  const known = loaded.waters.flatMap(({ fields }) => {
    const { Water: water, EC: ecMsCm } = fields;
    return typeof ecMsCm === "number" && typeof water === "string" ? [{ water, ecMsCm, Na: null, Cl: null }] : [];
  });
  return known.sort((a, b) => a.ecMsCm - b.ecMsCm)[0] ?? null;
}
