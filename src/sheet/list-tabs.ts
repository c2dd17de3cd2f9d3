/** The columns of the lists: Plants, Events, Claims, Trials, Settings. */

import type { TabSpec } from "./spec.ts";

export const PLANTS: TabSpec = {
  name: "Plants",
  aliases: ["Plant list", "Collection"],
  key: "Plant",
  help: "One row for each plant.",
  columns: [
    {
      heading: "Plant",
      kind: "text",
      aliases: ["Name", "Plant name", "Label"],
      help: "The name by which the logs know this plant. Each name once.",
    },
    {
      heading: "Kind",
      kind: "text",
      aliases: ["Species", "Variety", "Botanical name", "Taxon"],
      help: "Species or variety.",
    },
    { heading: "Place", kind: "text", aliases: ["Room", "Location", "Spot"], help: "Where it stands." },
    {
      heading: "Pot mL",
      kind: "number",
      aliases: ["Pot", "Reservoir mL", "Pot (mL)", "Volume mL"],
      unit: "mL",
      aside: true,
      help: "How much solution the reservoir holds when it is full.",
    },
    { heading: "Medium", kind: "text", aliases: ["Substrate"], help: "What the roots grow in." },
    {
      heading: "Since",
      kind: "day",
      aliases: ["Acquired", "Start", "Since when"],
      aside: true,
      help: "The day it came, or the day it went into water culture.",
    },
    { heading: "Note", kind: "text", aliases: ["Notes", "Remark", "Remarks", "Comment"], help: "Anything else." },
  ],
};

export const EVENTS: TabSpec = {
  name: "Events",
  key: "Event",
  help: "What can happen to a plant, and whether it disturbs the roots.",
  columns: [
    { heading: "Event", kind: "text", aliases: ["Name"], help: "As it is picked in the Care log." },
    {
      heading: "Disturbs roots",
      kind: "yes-no",
      aliases: ["Disturbs", "Disturbance", "Root disturbance"],
      choices: ["yes", "no"],
      help: "yes: the days at rest start again. no: they go on.",
    },
  ],
};

export const CLAIMS: TabSpec = {
  name: "Claims",
  key: "Id",
  alsoKeys: ["Claim"],
  help: "What somebody says helps, kept with how far it can be trusted here.",
  columns: [
    { heading: "Id", kind: "id", help: "Names this claim; made by the add-on." },
    { heading: "Claim", kind: "text", help: "What is said to help, in one sentence." },
    { heading: "Heard from", kind: "text", aliases: ["Source"], help: "Who says so." },
    {
      heading: "Years at it",
      kind: "number",
      aliases: ["Years"],
      unit: "years",
      aside: true,
      help: "How long they have grown this way.",
    },
    { heading: "Their setup", kind: "text", help: "Their pots, light, water and plants." },
    { heading: "Our setup", kind: "text", help: "What is different here." },
    {
      heading: "Status",
      kind: "choice",
      choices: ["heard", "trying", "kept", "dropped"],
      help: "How far it has come here.",
    },
    { heading: "Look again", kind: "day", aside: true, help: "The day to think about it again." },
    { heading: "Trial", kind: "name", refersTo: "Trials", help: "Id of the trial that tests it." },
    { heading: "Note", kind: "text", aliases: ["Notes", "Remark", "Remarks", "Comment"], help: "Anything else." },
  ],
};

export const TRIALS: TabSpec = {
  name: "Trials",
  key: "Id",
  alsoKeys: ["Question"],
  help: "One question each, tried on some plants and not on others.",
  columns: [
    { heading: "Id", kind: "id", help: "Names this trial; made by the add-on." },
    { heading: "Question", kind: "text", help: "What the trial should answer." },
    { heading: "Measure", kind: "text", help: "What is counted or measured on each plant." },
    { heading: "Started", kind: "day", aliases: ["Start"], aside: true, help: "First day." },
    { heading: "Ends", kind: "day", aliases: ["End"], aside: true, help: "Last day." },
    { heading: "Plants A", kind: "text", help: "Plants that get it, separated by semicolons." },
    { heading: "Plants B", kind: "text", help: "Plants that do not, separated by semicolons." },
    { heading: "Result", kind: "text", help: "What came out." },
  ],
};

export const SETTINGS: TabSpec = {
  name: "Settings",
  key: "Setting",
  help: "What the household has agreed on.",
  columns: [
    { heading: "Setting", kind: "text", aliases: ["Name", "Key"], help: "What is set; leave as it is." },
    { heading: "Value", kind: "text", help: "Change this one." },
    { heading: "Note", kind: "text", aliases: ["Notes"], help: "What it is for." },
  ],
};
