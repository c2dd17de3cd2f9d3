/** The host's screen on the page: the menu as buttons above the grid, messages, and the place of the sidebar. */

import type { MenuEntry, Screen } from "../standin/ui.ts";

export function byId<T extends HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no element “${id}”.`);
  return found as T;
}

const TOAST_MS = 6000;

/** A short word on what happened, gone after a while. */
export function toast(message: string): void {
  const line = byId("toast");
  line.textContent = message;
  line.hidden = false;
  setTimeout(() => {
    if (line.textContent === message) line.hidden = true;
  }, TOAST_MS);
}

/** Stays until the next one. */
export function notice(message: string): void {
  const line = byId("notice");
  line.textContent = message;
  line.hidden = message === "";
}

export interface ScreenParts {
  /** Runs a function of the script as the menu of the host would. */
  readonly run: (functionName: string) => void;
  readonly openSidebar: (title: string, html: string) => void;
}

export function makeScreen({ run, openSidebar }: ScreenParts): Screen {
  const flat = (entries: readonly MenuEntry[]): MenuEntry[] =>
    entries.flatMap((entry) => (entry.entries.length > 0 ? flat(entry.entries) : [entry]));
  return {
    addMenu(menu) {
      for (const { caption, functionName } of flat(menu.entries)) {
        if (functionName === null) continue;
        const button = document.createElement("button");
        button.type = "button";
        button.textContent = caption;
        button.addEventListener("click", () => run(functionName));
        byId("menus").append(button);
      }
    },
    alert(title, message, buttons) {
      const text = title === "" ? message : `${title}\n\n${message}`;
      if (buttons !== "OK") return window.confirm(text);
      window.alert(text);
      return true;
    },
    toast,
    sidebar: openSidebar,
  };
}
