/** Says why an element of a solved mix is off its target. */

import { ELEMENT_NAMES, type ElementSymbol } from "./elements.ts";
import { sayList, sayNumber } from "./saying.ts";

/** One wanted element of a solved mix, mg/L; `off` is (wanted − reached) relative to wanted, above 0 when short. */
export interface Balance {
  readonly symbol: ElementSymbol;
  readonly wanted: number;
  readonly water: number;
  readonly reached: number;
  readonly off: number;
}

/** One feed of the mix: its dose, and what one unit of dose adds to each element, relative to wanted. */
export interface Share {
  readonly dose: number;
  readonly column: readonly number[];
}

const nameOf = (balance: Balance | undefined) => (balance === undefined ? "" : ELEMENT_NAMES[balance.symbol]);

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * At the least misfit a feed's good and its harm are in balance: for a feed in use Σ column·off is 0, for one not
 * in use it is not above 0. So a feed that holds an element which is short also holds one that is over, and a feed
 * in use that holds one which is over also holds one that is short. The heaviest of those is what is named.
 */
function heaviest(share: Share, balances: readonly Balance[], side: "over" | "short"): number {
  let worst = -1;
  let weight = 0;
  share.column.forEach((part, i) => {
    const push = part * (balances[i] as Balance).off * (side === "over" ? -1 : 1);
    if (push > weight) {
      weight = push;
      worst = i;
    }
  });
  return worst;
}

function named(shares: readonly Share[], balances: readonly Balance[], side: "over" | "short"): string {
  const found: number[] = [];
  for (const share of shares) {
    const at = heaviest(share, balances, side);
    if (at >= 0 && !found.includes(at)) found.push(at);
  }
  return sayList(
    found.sort((a, b) => a - b).map((i) => nameOf(balances[i])),
    "or",
  );
}

/** The sentence for `balances[index]`, which is off its target. */
export function whyNotReached(index: number, balances: readonly Balance[], shares: readonly Share[]): string {
  const balance = balances[index] as Balance;
  const name = nameOf(balance);
  const wanted = sayNumber(balance.wanted);
  const holders = shares.filter(({ column }) => (column[index] as number) > 0);
  if (balance.off > 0) {
    const stays = `${capital(name)} stays at ${sayNumber(balance.reached)} of ${wanted} mg/L`;
    if (holders.length === 0) return `${stays}: none of these feeds holds ${name}.`;
    const over = named(holders, balances, "over");
    return `${stays}: more would bring too much ${over}.`;
  }
  if (balance.water >= balance.wanted && balance.water > 0) {
    return `The water alone brings ${sayNumber(balance.water)} of ${wanted} mg/L ${name}.`;
  }
  const inUse = holders.filter(({ dose }) => dose > 0);
  const short = named(inUse, balances, "short");
  return `${capital(name)} comes to ${sayNumber(balance.reached)} of ${wanted} mg/L: less would leave too little ${short}.`;
}
