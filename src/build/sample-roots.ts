/** What happened to the roots in the sample household: invented, with the reason as the household wrote it down. */

export interface Disturbance {
  readonly plant: string;
  /** Iso day. */
  readonly on: string;
  readonly event: string;
  readonly reason: string;
  readonly note: string;
}

const FROM_NOTEBOOK = "Copied from the paper notebook";

/** Before the log began. */
const NOTEBOOK: readonly (readonly [plant: string, on: string, event: string])[] = [
  ["Big monstera", "2024-03-17", "Pot up"],
  ["Golden pothos", "2023-05-14", "Repot"],
  ["Peace lily, large", "2024-04-06", "Repot"],
  ["Heartleaf", "2023-03-18", "Move from soil"],
  ["Snake plant", "2022-10-02", "Repot"],
  ["Red-edge dracaena", "2023-09-30", "Move from soil"],
  ["Bird's nest", "2024-03-02", "Move from soil"],
  ["Weeping fig", "2023-04-22", "Repot"],
  ["Fiddle-leaf", "2023-05-13", "Move from soil"],
  ["Prayer plant", "2024-05-18", "Move from soil"],
  ["Red anthurium", "2024-06-30", "Repot"],
  ["Papyrus by the sink", "2024-06-08", "Division"],
];

/** Since the log began. */
const LOGGED: readonly (readonly [plant: string, on: string, event: string, reason: string, note: string])[] = [
  [
    "Swiss cheese cutting",
    "2025-03-08",
    "Move from soil",
    "Fungus gnats in the soil",
    "Washed bare, three short roots cut off",
  ],
  [
    "Golden pothos",
    "2025-09-14",
    "Root trim",
    "Roots had grown out of every slot of the pot",
    "A third of the length off",
  ],
  ["Marble pothos", "2026-02-01", "Repot", "Old clay had broken to grit", ""],
  [
    "Odile's lily",
    "2026-03-29",
    "Division",
    "Two crowns, one promised to a neighbour",
    "The smaller half went next door",
  ],
  ["Red philodendron", "2025-05-25", "Pot up", "Pot had split", ""],
  ["Corner dracaena", "2025-04-12", "Repot", "Leaned over, roots all on one side", ""],
  ["Spider plant one", "2025-06-07", "Repot", "Thick roots had lifted it out of the pot", ""],
  ["Spider plant one", "2026-07-18", "Root trim", "The same again", "Wren counted 41 thick roots"],
  ["Spider plant two", "2025-06-07", "Repot", "Done together with its sister", ""],
  [
    "Fern on the shelf",
    "2025-04-26",
    "Move from soil",
    "Dried out every weekend in soil",
    "Peat would not all come off",
  ],
  [
    "Fern on the shelf",
    "2025-05-24",
    "Rinse out of pot",
    "Smelled of rot, peat left behind was decaying",
    "Back in the same pot with fresh clay",
  ],
  ["Rubber tree", "2026-04-05", "Pot up", "Fell over twice, top-heavy", ""],
  [
    "Weeping fig",
    "2026-06-06",
    "Pot up",
    "Drank its reservoir dry in five days",
    "Roots had filled the whole outer pot",
  ],
  ["Umbrella tree", "2025-08-03", "Wick replaced", "Old wick had rotted through", ""],
  ["Calathea", "2025-10-04", "Move from soil", "Bought in soil", "Long wash under the tap, water at room temperature"],
  ["Rattlesnake", "2026-05-10", "Repot", "Salt crust on the clay", ""],
  ["Chinese evergreen", "2025-03-30", "Division", "Three stems in one pot", "One for Wren's teacher, two stayed"],
  [
    "Dumb cane",
    "2026-09-20",
    "Repot",
    "Stem rot at the clay line, two roots gone",
    "Gloves and glasses: the sap is caustic",
  ],
  ["Arrowhead", "2025-07-12", "Move from soil", "Wren wanted to see its roots", ""],
  ["Inch plant", "2025-05-11", "Repot", "Started again from cuttings", ""],
  ["Inch plant", "2026-04-18", "Repot", "Started again from cuttings", ""],
  ["Parlour palm", "2026-05-02", "Move from soil", "Gift, came in soil", "Fine roots, half of them lost in the wash"],
  ["Papyrus by the sink", "2025-04-20", "Division", "Twice as wide as its pot", ""],
];

export const DISTURBANCES: readonly Disturbance[] = [
  ...NOTEBOOK.map(([plant, on, event]) => ({ plant, on, event, reason: "", note: FROM_NOTEBOOK })),
  ...LOGGED.map(([plant, on, event, reason, note]) => ({ plant, on, event, reason, note })),
];

/** From this day on the roots fill the reservoir: the plant drinks more and the reservoir holds less. */
export const FILLS_FROM: Readonly<Record<string, string>> = {
  "Big monstera": "2026-09-06",
  "Peace lily, large": "2026-05-30",
  "Weeping fig": "2026-03-10",
  "Papyrus by the sink": "2026-06-28",
};

/** The household's own event beside the built-in ones; it lifts the root ball, so it disturbs. */
export const OWN_EVENT = "Wick replaced";

export function disturbancesOf(plant: string): readonly Disturbance[] {
  return DISTURBANCES.filter((disturbance) => disturbance.plant === plant);
}
