/**
 * The tabs of version 2 as they stand in the sheets of households. A heading, another name for it, a kind or a unit
 * that changes here changes what those sheets mean: it needs a new version and a step that brings older tabs to it.
 */

import { expect, test } from "vitest";
import { SCHEMA } from "../../src/sheet/schema.ts";
import { type ColumnSpec, TAB_NAMES } from "../../src/sheet/spec.ts";
import { TABS } from "../../src/sheet/tabs.ts";

/**
 * A tab: name, other names, the column that names a row, those that also make a row a record. Below it its columns:
 * heading, other headings, kind, tab referred to or choices, unit, format, whether it is beside the arithmetic.
 */
const VERSION_2 = `
Plants | Plant list; Collection | Plant |
  Plant | Name; Plant name; Label | text |  |  |  |
  Kind | Species; Variety; Botanical name; Taxon | text |  |  |  |
  Place | Room; Location; Spot | text |  |  |  |
  Pot mL | Pot; Pot (mL); Volume mL | number |  | mL |  | aside
  Medium | Substrate | text |  |  |  |
  Since | Acquired; Start; Since when | day |  |  |  | aside
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
Care log | Plant log; Care | Id | Date; Plant; Event
  Id | Record id | id |  |  |  |
  Date | Day; When | day |  |  |  |
  Plant | Plant name | name | Plants |  |  |
  Event | Action; What | name | Events |  |  |
  Amount mL | Amount; Amount (mL); mL | number |  | mL |  | aside
  Solution | Batch; Water | text |  |  |  |
  EC | EC mS/cm | number |  | mS/cm at 25 °C | 0.00 | aside
  pH |  | number |  |  | 0.0# | aside
  Who | Person; By; Done by | text |  |  |  |
  Reason | Why | text |  |  |  |
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
  Corrects | Corrects id | text |  |  |  |
Events |  | Event |
  Event | Name | text |  |  |  |
  Disturbs roots | Disturbs; Disturbance; Root disturbance | yes-no | yes; no |  |  |
Feeds | Fertilizers; Fertilisers; Salts | Feed |
  Feed | Fertilizer; Fertiliser; Salt; Product; Name | text |  |  | @ |
  Basis |  | choice | w/w; w/v |  |  |
  N | Nitrogen; Total N; N total; N % | number |  | % |  |
  NO3-N | Nitrate-N; Nitrate nitrogen; N-NO3 | number |  | % |  |
  NH4-N | Ammonium-N; Ammoniacal nitrogen; Ammonium nitrogen; N-NH4 | number |  | % |  |
  Urea-N | Urea nitrogen; Ureic nitrogen; N-urea | number |  | % |  |
  Other-N | Other nitrogen; N-other | number |  | % |  |
  P2O5 | P₂O₅; Phosphate (P2O5); Available phosphate | number |  | % |  |
  K2O | K₂O; Soluble potash; Potash (K2O) | number |  | % |  |
  P | Phosphorus; P % | number |  | % |  |
  K | Potassium; K % | number |  | % |  |
  Ca | Calcium; Ca % | number |  | % |  |
  CaO | Calcium oxide | number |  | % |  |
  Mg | Magnesium; Mg % | number |  | % |  |
  MgO | Magnesium oxide | number |  | % |  |
  S | Sulfur; Sulphur; S % | number |  | % |  |
  SO3 | SO₃ | number |  | % |  |
  Fe | Iron | number |  | % |  |
  Mn | Manganese | number |  | % |  |
  Zn | Zinc | number |  | % |  |
  B | Boron | number |  | % |  |
  Cu | Copper | number |  | % |  |
  Mo | Molybdenum | number |  | % |  |
  Si | Silicon | number |  | % |  |
  SiO2 | SiO₂; Silica | number |  | % |  |
  Na | Sodium | number |  | % |  |
  Na2O | Na₂O | number |  | % |  |
  Cl | Chloride; Chlorine | number |  | % |  |
  Density | Density g/mL; Specific gravity | number |  | g/mL |  |
  Origin |  | choice | mineral; organic |  |  |
  Analysis published | Guaranteed analysis; Analysis | yes-no | yes; no |  |  |
  On hand | Stock; Left | number |  |  | 0.0 | aside
  Unit |  | choice | g; kg; mL; L |  |  |
  Price |  | number |  |  |  | aside
  Lot | Batch number; Lot number | text |  |  | @ |
  Label text | Label | text |  |  | @ |
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
Waters | Water reports | Water |
  Water | Name | text |  |  |  |
  Date | Day; Sampled | day |  |  |  | aside
  Source | Reported by | text |  |  |  |
  Ca | Calcium | number |  | mg/L |  |
  Mg | Magnesium | number |  | mg/L |  |
  Na | Sodium | number |  | mg/L |  |
  K | Potassium | number |  | mg/L |  |
  Alkalinity | Alkalinity as CaCO3; Total alkalinity; Alkalinity (CaCO3) | number |  | mg/L as CaCO3 |  |
  SO4 | Sulfate; Sulphate | number |  | mg/L |  |
  Cl | Chloride | number |  | mg/L |  |
  NO3-N | Nitrate-N; Nitrate nitrogen; Nitrate as N; N-NO3 | number |  | mg/L as N |  |
  Fe | Iron | number |  | mg/L |  |
  B | Boron | number |  | mg/L |  |
  EC | EC mS/cm; Conductivity mS/cm | number |  | mS/cm at 25 °C |  |
  pH |  | number |  |  |  |
  Disinfectant |  | choice | none; chlorine; chloramine; chlorine dioxide |  |  |
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
Targets | Recipes; Solutions | Target |
  Target | Name; Solution; Recipe | text |  |  |  |
  N | Nitrogen | number |  | mg/L |  |
  P | Phosphorus | number |  | mg/L |  |
  K | Potassium | number |  | mg/L |  |
  Ca | Calcium | number |  | mg/L |  |
  Mg | Magnesium | number |  | mg/L |  |
  S | Sulfur; Sulphur | number |  | mg/L |  |
  Fe | Iron | number |  | mg/L |  |
  Mn | Manganese | number |  | mg/L |  |
  Zn | Zinc | number |  | mg/L |  |
  B | Boron | number |  | mg/L |  |
  Cu | Copper | number |  | mg/L |  |
  Mo | Molybdenum | number |  | mg/L |  |
  Source | Reference | text |  |  |  |
Batch log | Batches | Id | Date; Litres; Doses
  Id | Record id | id |  |  |  |
  Date | Day; When | day |  |  |  |
  Who | Person; By; Done by | text |  |  |  |
  Litres | Liters; L; Volume L | number |  | L |  | aside
  Water |  | name | Waters |  |  |
  Target | Recipe | name | Targets |  |  |
  Doses | Feeds | text |  |  |  |
  N | Nitrogen | number |  | mg/L | 0.0## | aside
  P | Phosphorus | number |  | mg/L | 0.0## | aside
  K | Potassium | number |  | mg/L | 0.0## | aside
  Ca | Calcium | number |  | mg/L | 0.0## | aside
  Mg | Magnesium | number |  | mg/L | 0.0## | aside
  S | Sulfur; Sulphur | number |  | mg/L | 0.0## | aside
  Fe | Iron | number |  | mg/L | 0.0## | aside
  Mn | Manganese | number |  | mg/L | 0.0## | aside
  Zn | Zinc | number |  | mg/L | 0.0## | aside
  B | Boron | number |  | mg/L | 0.0## | aside
  Cu | Copper | number |  | mg/L | 0.0## | aside
  Mo | Molybdenum | number |  | mg/L | 0.0## | aside
  Predicted EC |  | number |  | mS/cm at 25 °C | 0.00 | aside
  Acid | pH down; Acid or base | text |  |  |  |
  Measured EC | EC; EC measured | number |  | mS/cm at 25 °C | 0.00 | aside
  Measured pH | pH; pH measured | number |  |  | 0.0# | aside
  Verdict |  | text |  |  |  |
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
  State |  | choice | planned; mixed |  |  |
  Corrects | Corrects id | text |  |  |  |
Purchases | Bought; Receipts | Id | Date; Feed; Amount
  Id | Record id | id |  |  |  |
  Date | Day; When | day |  |  |  |
  Feed | Fertilizer; Fertiliser; Product | name | Feeds |  |  |
  Amount | Quantity; Pack | number |  |  |  | aside
  Unit |  | choice | g; kg; mL; L |  |  |
  Price | Cost | number |  |  |  | aside
  Lot | Batch number; Lot number | text |  |  | @ |
  Who | Person; By; Done by | text |  |  |  |
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
  Corrects | Corrects id | text |  |  |  |
Meter log | Meters; Calibrations | Id | Date; Meter; Standard
  Id | Record id | id |  |  |  |
  Date | Day; When | day |  |  |  |
  Meter |  | choice | EC; pH |  |  |
  Standard |  | number |  |  |  | aside
  Reading |  | number |  |  |  | aside
  Temp C | Temperature | number |  | °C |  | aside
  Calibrated |  | yes-no | yes; no |  |  |
  Who | Person; By; Done by | text |  |  |  |
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
  Corrects | Corrects id | text |  |  |  |
Claims |  | Id | Claim
  Id |  | id |  |  |  |
  Claim |  | text |  |  |  |
  Heard from | Source | text |  |  |  |
  Years at it | Years | number |  | years |  | aside
  Their setup |  | text |  |  |  |
  Our setup |  | text |  |  |  |
  Agrees |  | text |  |  |  |
  Differs | Differences | text |  |  |  |
  Status |  | choice | heard; trying; kept; dropped |  |  |
  Heard on |  | day |  |  |  | aside
  Look again |  | day |  |  |  | aside
  Trial |  | name | Trials |  |  |
  What came of it | Outcome | text |  |  |  |
  Who | Person | text |  |  |  |
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
  Corrects | Corrects id | text |  |  |  |
Trials |  | Id | Question
  Id |  | id |  |  |  |
  Question |  | text |  |  |  |
  Measure |  | text |  |  |  |
  Started | Start | day |  |  |  | aside
  Ends | End | day |  |  |  | aside
  Group A | A gets | text |  |  |  |
  Group B | B gets | text |  |  |  |
  Plants A |  | text |  |  |  |
  Plants B |  | text |  |  |  |
  Design |  | choice | Pairs; Together |  |  |
  Draw |  | number |  |  | 0 | aside
  Worth seeing |  | number |  |  |  | aside
  Result |  | text |  |  |  |
  Difference |  | number |  |  | 0.0## | aside
  From |  | number |  |  | 0.0## | aside
  To |  | number |  |  | 0.0## | aside
  p |  | number |  |  | 0.0### | aside
  Who | Person | text |  |  |  |
  Note | Notes; Remark; Remarks; Comment | text |  |  |  |
  Corrects | Corrects id | text |  |  |  |
Settings |  | Setting |
  Setting | Name; Key | text |  |  |  |
  Value |  | text |  |  |  |
  Note | Notes | text |  |  |  |
`;

const listed = (names: readonly string[] = []): string => names.join("; ");

function line({ heading, aliases, kind, refersTo, choices, unit, format, aside }: ColumnSpec): string {
  const parts = [heading, listed(aliases), kind, refersTo ?? listed(choices), unit, format, aside ? "aside" : ""];
  return `  ${parts.map((part) => part ?? "").join(" | ")}`.trimEnd();
}

test("the tabs are those of the version they are marked with", () => {
  const now = TABS.flatMap(({ name, aliases, key, alsoKeys, columns }) => [
    [name, listed(aliases), key, listed(alsoKeys)].join(" | ").trimEnd(),
    ...columns.map(line),
  ]);
  expect(SCHEMA).toBe(2);
  expect(now).toEqual(VERSION_2.trim().split("\n"));
  expect(TABS.map(({ name }) => name)).toEqual(TAB_NAMES);
});

test("every tab and every column says in a sentence what it is for", () => {
  const sentence = /^(?:[A-Z]|yes: |no: |planned: |w\/w: |pH ).*[A-Za-z\d)]\.$/s;
  for (const { help, columns } of TABS) {
    for (const said of [help, ...columns.map((column) => column.help)]) expect(said).toMatch(sentence);
  }
});
