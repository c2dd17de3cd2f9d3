/** The columns of the lists: Plants, Events, Claims, Trials, Settings. */

import { choice, day, id, NOTE, nameOf, number, text, yesNo } from "./columns.ts";
import type { TabSpec } from "./spec.ts";

export const PLANTS: TabSpec = {
  name: "Plants",
  aliases: ["Plant list", "Collection"],
  key: "Plant",
  help: "One row for each plant.",
  columns: [
    text(["Plant", "Name", "Plant name", "Label"], "The name by which the logs know this plant. Each name once."),
    text(["Kind", "Species", "Variety", "Botanical name", "Taxon"], "Species or variety."),
    text(["Place", "Room", "Location", "Spot"], "Where it stands."),
    number(
      ["Pot mL", "Pot", "Pot (mL)", "Volume mL"],
      "How much the whole pot holds, in mL; its reservoir is about a quarter to a third of that (common practice, no source).",
      { unit: "mL", aside: true },
    ),
    text(["Medium", "Substrate"], "What the roots grow in."),
    day(["Since", "Acquired", "Start", "Since when"], "The day it came, or the day it went into water culture.", {
      aside: true,
    }),
    NOTE,
  ],
};

export const EVENTS: TabSpec = {
  name: "Events",
  key: "Event",
  help: "What can happen to a plant, and whether it disturbs the roots.",
  columns: [
    text(["Event", "Name"], "As it is picked in the Care log."),
    yesNo(
      ["Disturbs roots", "Disturbs", "Disturbance", "Root disturbance"],
      "yes: the days at rest start again. no: they go on.",
    ),
  ],
};

export const CLAIMS: TabSpec = {
  name: "Claims",
  key: "Id",
  alsoKeys: ["Claim"],
  help: "What somebody says helps, kept with how far it can be trusted here.",
  columns: [
    id("Id", "Names this claim; made by the add-on."),
    text("Claim", "What is said to help, in one sentence."),
    text(["Heard from", "Source"], "Who says so."),
    number(["Years at it", "Years"], "How long they have grown this way.", { unit: "years", aside: true }),
    text("Their setup", "Their pots, light, water and plants."),
    text("Our setup", "What is different here."),
    choice("Status", "How far it has come here.", ["heard", "trying", "kept", "dropped"]),
    day("Look again", "The day to think about it again.", { aside: true }),
    nameOf("Trials", "Trial", "Id of the trial that tests it."),
    NOTE,
  ],
};

export const TRIALS: TabSpec = {
  name: "Trials",
  key: "Id",
  alsoKeys: ["Question"],
  help: "One question each, tried on some plants and not on others.",
  columns: [
    id("Id", "Names this trial; made by the add-on."),
    text("Question", "What the trial should answer."),
    text("Measure", "What is counted or measured on each plant."),
    day(["Started", "Start"], "First day.", { aside: true }),
    day(["Ends", "End"], "Last day.", { aside: true }),
    text("Plants A", "Plants that get it, separated by semicolons."),
    text("Plants B", "Plants that do not, separated by semicolons."),
    text("Result", "What came out."),
  ],
};

export const SETTINGS: TabSpec = {
  name: "Settings",
  key: "Setting",
  help: "What the household has agreed on.",
  columns: [
    text(["Setting", "Name", "Key"], "What is set; leave as it is."),
    text("Value", "Change this one."),
    text(["Note", "Notes"], "What it is for."),
  ],
};
