/** When something about a pot is due: the household's rules, with defaults that are common practice without a source. */

import { headingKey } from "./cell.ts";

/** null: this is never due. */
export interface DueRules {
  /** Days without a top-up, for a plant whose own rate is not known yet. */
  readonly topUpDays: number | null;
  readonly flushDays: number | null;
  readonly changeDays: number | null;
  /** A reading of this EC or more asks for a flush; mS/cm at 25 °C. */
  readonly ecCeilingMsCm: number | null;
  /** Rise of the use over eight weeks, 0.3 for 30 %. */
  readonly riseShare: number | null;
  /** A recovering plant is looked at this often … */
  readonly lookDays: number | null;
  /** … for this long. */
  readonly recoveryDays: number | null;
}

export interface DueSetting {
  readonly rule: keyof DueRules;
  /** As it stands on the Settings tab. */
  readonly setting: string;
  readonly value: number;
  readonly unit: string;
  readonly max: number;
  /** How many units of the setting make 1 of the rule: 100 for percent. */
  readonly per: number;
  readonly note: string;
}

const DAYS = { unit: "days", max: 3650, per: 1 };

/** Flush about monthly: common practice, no source; so are all other defaults here. */
export const DUE_SETTINGS: readonly DueSetting[] = [
  {
    ...DAYS,
    rule: "topUpDays",
    setting: "Top up days",
    value: 14,
    note: "A plant whose own drinking is not known yet is thirsty after this many days.",
  },
  {
    ...DAYS,
    rule: "flushDays",
    setting: "Flush days",
    value: 30,
    note: "Plain water is flushed through after this many days on the same solution.",
  },
  {
    ...DAYS,
    rule: "changeDays",
    setting: "Change days",
    value: 90,
    note: "The solution is changed whole after this many days.",
  },
  {
    rule: "ecCeilingMsCm",
    setting: "EC ceiling",
    value: 2,
    unit: "mS/cm",
    max: 20,
    per: 1,
    note: "A reservoir that reads this EC or more, in mS/cm at 25 °C, is to be flushed.",
  },
  {
    rule: "riseShare",
    setting: "Root rise %",
    value: 30,
    unit: "%",
    max: 1000,
    per: 100,
    note: "A plant that drinks this much more than eight weeks ago, the season set aside, fills its reservoir with roots.",
  },
  {
    ...DAYS,
    rule: "lookDays",
    setting: "Look days",
    value: 7,
    note: "A plant that recovers from a disturbance is looked at this often.",
  },
  {
    ...DAYS,
    rule: "recoveryDays",
    setting: "Recovery days",
    value: 90,
    note: "A plant is watched for this long for its first new leaf or root.",
  },
];

/** The rules with some settings replaced; `own` gives null for a setting to leave as it is and "off" for never. */
export function dueRules(own: (setting: DueSetting) => number | "off" | null = () => null): DueRules {
  const rules: { -readonly [rule in keyof DueRules]?: number | null } = {};
  for (const setting of DUE_SETTINGS) {
    const value = own(setting) ?? setting.value;
    rules[setting.rule] = value === "off" ? null : value / setting.per;
  }
  return rules as DueRules;
}

/** The setting of this name, case and spaces ignored; null for any other. */
export function dueSetting(name: string): DueSetting | null {
  return DUE_SETTINGS.find(({ setting }) => headingKey(setting) === headingKey(name)) ?? null;
}
