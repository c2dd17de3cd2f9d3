/** The columns of the lists: Plants, Events, Claims, Trials, Settings. */

import { CORRECTS, choice, day, id, NOTE, nameOf, number, text, yesNo } from "./columns.ts";
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
    text("Our setup", "Our pots, light, water and plants."),
    text("Agrees", "In what their setup is like ours."),
    text(["Differs", "Differences"], "In what it is not."),
    choice("Status", "How far it has come here.", ["heard", "trying", "kept", "dropped"]),
    day("Heard on", "The day it was heard; whoever said it may have changed their mind since.", { aside: true }),
    day("Look again", "The day to think about it again.", { aside: true }),
    nameOf("Trials", "Trial", "Id of the trial that tests it."),
    text(["What came of it", "Outcome"], "How it went here."),
    text(["Who", "Person"], "Who wrote this row."),
    NOTE,
    CORRECTS,
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
    text(["Group A", "A gets"], "What the plants A get."),
    text(["Group B", "B gets"], "What the plants B get."),
    text("Plants A", "Plants that get it, separated by semicolons."),
    text("Plants B", "Plants that do not, separated by semicolons; in pairs in the same order as Plants A."),
    choice("Design", "Pairs: plants were drawn within pairs. Together: half of all plants were drawn.", [
      "Pairs",
      "Together",
    ]),
    number("Draw", "The number the groups were drawn by; the same number gives the same groups.", {
      aside: true,
      format: "0",
    }),
    number("Worth seeing", "The smallest difference that would matter, settled beforehand.", { aside: true }),
    text("Result", "What came out, filled in when the last day is over."),
    number("Difference", "Mean of A minus mean of B.", { aside: true, format: "0.0##" }),
    number("From", "Lower end of the 95 % interval of the difference.", { aside: true, format: "0.0##" }),
    number("To", "Upper end of the 95 % interval of the difference.", { aside: true, format: "0.0##" }),
    number("p", "Exact permutation p, two-sided.", { aside: true, format: "0.0###" }),
    text(["Who", "Person"], "Who began it."),
    NOTE,
    CORRECTS,
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
