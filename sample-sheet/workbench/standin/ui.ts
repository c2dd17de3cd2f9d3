/** Menus, messages and the sidebar of the host, shown on whatever screen the stand-in is given. */

import { type Gate, imitate } from "./gate.ts";

type Ui = GoogleAppsScript.Base.Ui;
type Menu = GoogleAppsScript.Base.Menu;
type HtmlOutput = GoogleAppsScript.HTML.HtmlOutput;

export interface MenuEntry {
  readonly caption: string;
  /** Public function to call; null for a separator. */
  readonly functionName: string | null;
  readonly entries: readonly MenuEntry[];
}

/** Where menus, messages and the sidebar appear. */
export interface Screen {
  addMenu(menu: MenuEntry): void;
  /** True when the person agreed (an alert with one button always is). */
  alert(title: string, message: string, buttons: string): boolean;
  toast(message: string): void;
  sidebar(title: string, html: string): void;
}

const BUTTON = { CLOSE: "CLOSE", OK: "OK", CANCEL: "CANCEL", YES: "YES", NO: "NO" };
const BUTTON_SET = { OK: "OK", OK_CANCEL: "OK_CANCEL", YES_NO: "YES_NO", YES_NO_CANCEL: "YES_NO_CANCEL" };

const contents = new WeakMap<object, MenuEntry>();

function makeMenu(caption: string, screen: Screen): Menu {
  const entries: MenuEntry[] = [];
  const menu: Menu = imitate<Menu>()("Menu", {
    addItem: (text: string, functionName: string) => {
      entries.push({ caption: text, functionName, entries: [] });
      return menu;
    },
    addSeparator: () => {
      entries.push({ caption: "", functionName: null, entries: [] });
      return menu;
    },
    addSubMenu: (inner: Menu) => {
      const content = contents.get(inner);
      if (!content) throw new Error("The parameters don't match the method signature for Menu.addSubMenu.");
      entries.push(content);
      return menu;
    },
    addToUi: () => screen.addMenu({ caption, functionName: null, entries }),
  });
  contents.set(menu, { caption, functionName: null, entries });
  return menu;
}

/** `addonName` is what the host calls an add-on's own menu. */
export function makeUi(gate: Gate, screen: Screen): Ui {
  return imitate<Ui>()("Ui", {
    Button: BUTTON as unknown as Ui["Button"],
    ButtonSet: BUTTON_SET as unknown as Ui["ButtonSet"],
    createMenu: (caption: string) => makeMenu(caption, screen),
    createAddonMenu: () => makeMenu("Stillroot", screen),
    alert: (...given: unknown[]) => {
      const texts = given.filter((part): part is string => typeof part === "string");
      const last = texts[texts.length - 1] ?? "";
      const buttons = given.length > 1 && last in BUTTON_SET ? last : "OK";
      const words = texts.filter((text, index) => !(index > 0 && index === texts.length - 1 && text === buttons));
      const [title, message] = words.length > 1 ? [words[0] ?? "", words[1] ?? ""] : ["", words[0] ?? ""];
      const agreed = gate.reach("Ui.alert", "service", () => screen.alert(title, message, buttons));
      const answer = buttons.startsWith("YES") ? (agreed ? "YES" : "NO") : agreed ? "OK" : "CANCEL";
      return answer as unknown as ReturnType<Ui["alert"]>;
    },
    showSidebar: (output: HtmlOutput) =>
      gate.reach("Ui.showSidebar", "service", () => screen.sidebar(output.getTitle(), output.getContent())),
  });
}

/** A screen that keeps what it was shown, for tests. */
export class PaperScreen implements Screen {
  readonly menus: MenuEntry[] = [];
  readonly alerts: string[] = [];
  readonly toasts: string[] = [];
  readonly sidebars: { title: string; html: string }[] = [];
  agree = true;

  addMenu(menu: MenuEntry): void {
    this.menus.push(menu);
  }
  alert(title: string, message: string): boolean {
    this.alerts.push(title === "" ? message : `${title}: ${message}`);
    return this.agree;
  }
  toast(message: string): void {
    this.toasts.push(message);
  }
  sidebar(title: string, html: string): void {
    this.sidebars.push({ title, html });
  }
}
