/** Words of printed analyses in six languages, and what each says: data only. Written without accents, in lower case. */

import type { ElementSymbol } from "./elements.ts";

/** An element by name: which formula it stands for is left open. */
export const ELEMENT_WORDS: ReadonlyMap<string, ElementSymbol> = build<ElementSymbol>({
  N: "nitrogen stickstoff azote nitrogeno azoto stikstof",
  P: "phosphorus phosphor phosphore fosforo fosfor",
  K: "potassium kalium potasio potassio",
  Ca: "calcium kalzium calcio",
  Mg: "magnesium magnesio",
  S: "sulfur sulphur schwefel soufre azufre zolfo zwavel",
  Fe: "iron eisen fer hierro ferro ijzer",
  Mn: "manganese mangan manganeso mangaan",
  Zn: "zinc zink cinc zinco",
  B: "boron bor bore boro borium boor",
  Cu: "copper kupfer cuivre cobre rame koper",
  Mo: "molybdenum molybdan molybdene molibdeno molybdeen",
  Si: "silicon silizium silicium silicio",
  Na: "sodium natrium sodio",
  Cl: "chlorine chloride chlor chlorid chlore chlorure cloro cloruro chloor",
});

/** What an element word or a form of nitrogen is printed as. */
export type Marker =
  | "oxide"
  | "phosphate"
  | "potash"
  | "nitrate"
  | "ammonium"
  | "urea"
  | "sulfate"
  | "elemental"
  | "slow"
  | "total"
  | "available"
  | "soluble"
  | "chelated"
  | "at most"
  | "of which"
  | "filler";

export const MARKER_WORDS: ReadonlyMap<string, Marker> = build<Marker>({
  oxide:
    "oxide oxid oxyde oxido ossido pentoxido pentossido trioxido triossido pentoxide pentoxid pentoxyde trioxide trioxid trioxyde dioxide dioxid dioxyde dioxido diossido anhydride anhydrid anidride anhidrido",
  phosphate: "phosphate phosphat phosphoric phosphorsaure phosphorique fosforica fosforico fosfato fosfaat",
  potash: "potash kali potasse potasa potassa",
  nitrate: "nitrate nitric nitrat nitrique nitrico nitrica nitrato nitraat",
  ammonium: "ammonium ammoniacal ammoniac ammonia ammoniacale amoniacal ammoniak ammon",
  urea: "urea ureic ureique ureico ureica carbamid carbamide harnstoff uree ureum amidic",
  sulfate: "sulfate sulphate sulfat sulfaat solfato sulfato",
  elemental: "elemental elementar elementaire elemento",
  slow: "slow slowly release released controlled insoluble other",
  total: "total totale totaal gesamt gesamter",
  available: "available citrate assimilable asimilable",
  soluble:
    "soluble solubles hydrosoluble solubile loslich losliches loslicher losliche wasserloslich wasserlosliches wasserloslicher wasserlosliche oplosbaar water wateroplosbaar wasser eau agua acqua",
  chelated:
    "chelated chelate chelates chelat chelatiert chelatisiert chelatee quelado quelatado quelato chelato chelaat gechelateerd edta dtpa eddha hedta eddhsa hbed idha ortho para",
  "at most": "maximum max maximal hochstens massimo maximo",
  "of which": "which davon dont cui cuales waarvan wovon",
  filler:
    "of the as in and from at with minimum min mindestens content contains containing by weight per form forma forme to a an not than est de des du la le les l d di del della il lo las los el y e et con en als in met van im und mit von aus guaranteed garantiert element acid saure acide acido expressed dans par sous door con por nel entre nell nella nelle op or und sowie only",
});

/** Words that head a part of a label and say nothing by themselves. */
export const HEADING_WORDS: ReadonlySet<string> = new Set(
  "guaranteed minimum analysis analyse garantierte garantie garantita garantizado analisis analisi composition composizione composicion zusammensetzung samenstelling declared declaration contents content nutrient nutrients nutrition micronutrients micronutrient macronutrients secondary primary plant food trace elements element spurennahrstoffe spurenelemente nahrstoffe oligo oligoelements oligoelementos microelementi microelementos sporenelementen fertilizer fertiliser ec eu npk mineral compound solution liquid w te engrais dunger dungemittel volldunger flussigdunger abono concime fertilizzante fertilizante meststof spurennahrstoffen".split(
    " ",
  ),
);

/** Elements that some labels state and that are not counted here. */
export const NOT_COUNTED: ReadonlyMap<string, string> = new Map(
  ["cobalt", "kobalt", "cobalto", "nickel", "selenium", "selen", "iodine", "Co", "Ni", "Se"].map((word) => [
    word,
    word,
  ]),
);

/** Begins a list of raw materials, which holds no amounts. */
export const SOURCES_LINE =
  /^\W*(?:plant (?:food|nutrient) sources?|nutrient sources?|derived from|sources?\b|made from|ingredients?\b|raw materials?|hergestellt aus|ausgangsstoffe|rohstoffe|issus? d|provenant d|matieres premieres|obtenido de|derivado de|materias primas|derivato da|ottenuto da|materie prime|afkomstig van|grondstoffen)/;

/** German and Dutch write one word where others write two. */
export const COMPOUNDS: readonly (readonly [pattern: RegExp, words: string])[] = [
  [
    /neutra(?:al|l|lem)[- ]?ammon(?:ium)?[- ]?citra(?:at|t\w*)|citrate d['’]? ?ammonium neutre|citrato (?:d['’]? ?|de )?amm?oni(?:o|co) neutro/g,
    "citrate",
  ],
  [/gesamt-?(stickstoff|phosphat|kalium|calcium|magnesium|schwefel)/g, "total $1"],
  [/nitrat-?stickstoff|nitraat-?stikstof/g, "nitrat stickstoff"],
  [/ammonium-?stickstoff|ammoniak-?stickstoff|ammonium-?stikstof|ammoniakale stikstof/g, "ammonium stickstoff"],
  [/(?:carbamid|harnstoff|amid)-?stickstoff|ureum-?stikstof/g, "carbamid stickstoff"],
  [/(?:phosphor|fosfor)-?pentoxide?/g, "phosphor pentoxid"],
  [/(kalium|magnesium|calcium|natrium)-?(oxid)e?\b/g, "$1 $2"],
  [/fosforzuur-?anhydride/g, "fosfor anhydride"],
  [/(?:schwefel|zwavel)-?trioxide?/g, "schwefel trioxid"],
  [/anhydride sulfurique|anhidrido sulfurico|anidride solforica/g, "schwefel trioxid"],
  [/silicium-?dioxide?/g, "silicium dioxid"],
];

function build<Meaning extends string>(words: Readonly<Record<Meaning, string>>): ReadonlyMap<string, Meaning> {
  const table = new Map<string, Meaning>();
  for (const meaning of Object.keys(words) as Meaning[]) {
    for (const word of words[meaning].split(" ")) table.set(word, meaning);
  }
  return table;
}

/** Phrases of limits, put as one word before the line is read. */
export const LIMIT_PHRASES: readonly (readonly [pattern: RegExp, word: string])[] = [
  [/not less than|no less than|nicht weniger als|pas moins de|non meno di/g, " min "],
  [/not more than|no more than|nicht mehr als|pas plus de|non piu di/g, " max "],
  [/at least|more than|mehr als|au moins|almeno|al menos|ten minste/g, " min "],
  [/less than|weniger als|up to|at most|au plus|al massimo|ten hoogste/g, " max "],
];
