/** What the steps of a move from soil are called, and how one is done. Common practice, no source. */

import type { MoveStep } from "../src/core/move.ts";

export const MOVE_WORDS: Readonly<
  Record<MoveStep, { readonly done: string; readonly next: string; readonly press: string }>
> = {
  wash: { done: "soil washed off", next: "wash the soil off", press: "Washed" },
  weak: { done: "weak solution", next: "fill with weak solution", press: "Weak solution filled" },
  look: { done: "looked, no water roots yet", next: "look again", press: "No roots yet" },
  roots: { done: "first water roots", next: "look for the first water roots", press: "Roots seen" },
  full: { done: "full strength", next: "change to full strength", press: "Full strength filled" },
};

export const MOVE_STEPS: readonly string[] = [
  "Wash all the soil off the roots in lukewarm water; what stays behind rots. Cut off what is soft or brown. The sap of some plants burns skin and eyes and is poisonous: wear gloves, and keep children and pets away.",
  "Give weak solution, a quarter to a half of the usual strength, for two to six weeks, and fill it fresh every two weeks.",
  "Look for white water roots after two weeks, then once a week, by lifting the pot out of its reservoir; leave the plant in its pot.",
  "Change to full strength once water roots are there, not before two weeks.",
];
