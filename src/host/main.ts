/** What the bundle hands to the top-level functions of Code.js. */

export { call } from "./formulas.ts";
export { archiveOldCare, makeBoardTabs, onInstall, onOpen, openPanel, refreshToday, setUpTabs } from "./menu.ts";
export { panelRequest } from "./panel.ts";
