/** The finished trial of the sample household: which plants are on which side, pair by pair, as its draw gives them. Invented. */

export const TRIAL_FROM = "2026-05-20";
export const TRIAL_TO = "2026-10-31";
/** Gives the sides below; a test draws them again. */
export const TRIAL_DRAW = 20_260_540;

export const TRIAL_A: readonly string[] = [
  "Heartleaf",
  "Spider plant one",
  "Golden pothos",
  "Prayer plant",
  "Rattlesnake",
  "Red philodendron",
];

export const TRIAL_B: readonly string[] = [
  "Marble pothos",
  "Spider plant two",
  "Arrowhead",
  "Bird's nest",
  "Calathea",
  "Dumb cane",
];
