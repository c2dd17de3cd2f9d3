/** The household and its plants: all invented, first names and an invented place. Kinds are common houseplants. */

export const TODAY = "2026-11-24";
export const LOG_STARTS = "2024-11-24";

export const PEOPLE = ["Ines", "Tomas", "Odile", "Wren"] as const;
export type Person = (typeof PEOPLE)[number];

/** Who usually looks after a room; a name twice means twice as often. */
export const ROOM_KEEPERS: Readonly<Record<string, readonly Person[]>> = {
  Kitchen: ["Ines", "Ines", "Tomas"],
  "Living room": ["Ines", "Tomas", "Tomas"],
  Stairwell: ["Tomas", "Ines"],
  Study: ["Tomas", "Tomas", "Ines"],
  Bathroom: ["Ines", "Ines", "Wren"],
  "Wren's room": ["Wren", "Wren", "Ines"],
  "Winter garden": ["Odile", "Odile", "Ines"],
};

export interface PlantStory {
  readonly plant: string;
  readonly kind: string;
  readonly place: string;
  readonly potMl: number;
  /** Iso day on which it came into clay. */
  readonly since: string;
  /** Mean drink over the year, mL a day, before growth. */
  readonly drinkMlDay: number;
  /** New leaves a month in summer. */
  readonly leavesAMonth: number;
}

/** Plant, kind, place, pot mL, since, mL a day, leaves a month: the fields above, in their order. */
const ROWS: readonly (readonly [string, string, string, number, string, number, number])[] = [
  ["Big monstera", "Monstera deliciosa", "Living room", 6000, "2022-04-16", 78, 1.1],
  ["Swiss cheese cutting", "Monstera adansonii", "Kitchen", 800, "2025-03-08", 11, 1.4],
  ["Golden pothos", "Epipremnum aureum", "Kitchen", 1200, "2021-09-05", 24, 1.6],
  ["Marble pothos", "Epipremnum aureum", "Stairwell", 1000, "2022-02-12", 16, 1],
  ["Peace lily, large", "Spathiphyllum wallisii", "Bathroom", 2500, "2022-06-25", 46, 1.5],
  ["Odile's lily", "Spathiphyllum wallisii", "Winter garden", 1500, "2023-05-06", 29, 1.2],
  ["Heartleaf", "Philodendron hederaceum", "Study", 900, "2023-03-18", 15, 1.5],
  ["Red philodendron", "Philodendron erubescens", "Living room", 1800, "2023-07-01", 27, 0.9],
  ["Snake plant", "Dracaena trifasciata", "Study", 1400, "2021-10-10", 7, 0.3],
  ["Corner dracaena", "Dracaena fragrans", "Living room", 5000, "2022-11-20", 41, 0.9],
  ["Red-edge dracaena", "Dracaena reflexa", "Stairwell", 3000, "2023-09-30", 25, 0.9],
  ["Spider plant one", "Chlorophytum comosum", "Wren's room", 900, "2023-02-11", 21, 1.8],
  ["Spider plant two", "Chlorophytum comosum", "Kitchen", 900, "2023-02-11", 20, 1.7],
  ["Fern on the shelf", "Nephrolepis exaltata", "Bathroom", 1500, "2025-04-26", 35, 2.4],
  ["Bird's nest", "Asplenium nidus", "Bathroom", 1200, "2024-03-02", 19, 0.9],
  ["Rubber tree", "Ficus elastica", "Living room", 6000, "2022-05-28", 52, 0.8],
  ["Weeping fig", "Ficus benjamina", "Winter garden", 7000, "2021-06-12", 66, 2],
  ["Fiddle-leaf", "Ficus lyrata", "Winter garden", 8000, "2023-05-13", 70, 0.9],
  ["Umbrella tree", "Heptapleurum arboricola", "Stairwell", 4000, "2022-08-21", 44, 1.3],
  ["Prayer plant", "Maranta leuconeura", "Bathroom", 700, "2024-05-18", 12, 1.6],
  ["Calathea", "Goeppertia orbifolia", "Study", 1300, "2025-10-04", 20, 1.1],
  ["Rattlesnake", "Goeppertia insignis", "Living room", 1300, "2023-11-11", 20, 1.1],
  ["Red anthurium", "Anthurium andraeanum", "Kitchen", 1500, "2022-12-03", 22, 0.7],
  ["Chinese evergreen", "Aglaonema commutatum", "Study", 1600, "2023-01-14", 18, 0.7],
  ["Dumb cane", "Dieffenbachia seguine", "Living room", 2600, "2022-07-09", 37, 1.2],
  ["Arrowhead", "Syngonium podophyllum", "Wren's room", 800, "2025-07-12", 15, 1.8],
  ["ZZ plant", "Zamioculcas zamiifolia", "Stairwell", 1700, "2022-03-27", 6, 0.3],
  ["Inch plant", "Tradescantia zebrina", "Wren's room", 500, "2024-08-31", 13, 2.6],
  ["Wax plant", "Hoya carnosa", "Wren's room", 900, "2024-10-19", 8, 0.6],
  ["Parlour palm", "Chamaedorea elegans", "Study", 2200, "2026-05-02", 24, 0.6],
  ["Papyrus by the sink", "Cyperus alternifolius", "Kitchen", 2000, "2024-06-08", 62, 2.2],
];

export const PLANTS: readonly PlantStory[] = ROWS.map(
  ([plant, kind, place, potMl, since, drinkMlDay, leavesAMonth]) => ({
    plant,
    kind,
    place,
    potMl,
    since,
    drinkMlDay,
    leavesAMonth,
  }),
);

/** Kinds whose sap holds oxalate crystals or latex (arum, fig and ivy families): common practice, no source. */
const SAP_GENERA =
  /^(Monstera|Epipremnum|Spathiphyllum|Philodendron|Anthurium|Aglaonema|Dieffenbachia|Syngonium|Zamioculcas|Ficus|Heptapleurum) /;

export function noteFor(kind: string): string {
  return SAP_GENERA.test(kind) ? "Sap irritates skin and eyes: gloves. Out of reach of children and pets." : "";
}
