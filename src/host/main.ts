/** What the bundle hands to the top-level functions of Code.js. */

export { call } from "./formulas.ts";
export { makeBoardTabs, onInstall, onOpen, openPanel, refreshToday, setUpTabs } from "./menu.ts";
export { panelRequest } from "./panel.ts";
