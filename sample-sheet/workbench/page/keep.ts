/** Keeps every change: a moment after the last one the whole sheet goes to the server, and the page says whether it arrived. */

import { CommandType } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { byId } from "./screen.ts";

const QUIET_MS = 250;
const RETRY_MS = 3000;

/** What is kept, as JSON. */
export interface KeptSheet {
  readonly workbook: unknown;
  readonly timeZone: string;
  readonly user: Record<string, string>;
  readonly document: Record<string, string>;
  readonly script: Record<string, string>;
}

/** Works of the engine, the cell editor and the screen, which are no change of the sheet. */
function isOwnWork(id: string): boolean {
  return id.startsWith("formula.") || id.startsWith("doc.") || id.includes("auto-height") || id.includes("skeleton");
}

export class Keeper {
  private dirty = false;
  private sending: Promise<void> | null = null;
  private timer: number | null = null;
  private waiting: (() => void)[] = [];
  private readonly content: () => KeptSheet;

  constructor(api: FUniver, content: () => KeptSheet) {
    this.content = content;
    api.onCommandExecuted((command, options) => {
      if (command.type !== CommandType.MUTATION || options?.onlyLocal || isOwnWork(command.id)) return;
      this.changed();
    });
    window.addEventListener("pagehide", () => void this.send());
    window.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden" && this.dirty) void this.send();
    });
    window.addEventListener("beforeunload", (event) => {
      if (!this.dirty && this.sending === null) return;
      void this.send();
      event.preventDefault();
    });
  }

  changed(): void {
    this.dirty = true;
    byId("saved").textContent = "Keeping changes…";
    this.later(QUIET_MS);
  }

  private later(delayMs: number): void {
    if (this.timer !== null) window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => void this.send(), delayMs);
  }

  private async send(): Promise<void> {
    if (this.sending !== null || !this.dirty) return this.sending ?? undefined;
    this.dirty = false;
    this.sending = this.post();
    await this.sending;
    this.sending = null;
    if (this.dirty) this.later(this.timer === null ? RETRY_MS : QUIET_MS);
    else for (const done of this.waiting.splice(0)) done();
  }

  private async post(): Promise<void> {
    if (this.timer !== null) window.clearTimeout(this.timer);
    this.timer = 0;
    try {
      const response = await fetch("/kept", {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify(this.content()),
      });
      if (!response.ok) throw new Error(await response.text());
      byId("saved").textContent = "All changes kept";
    } catch (error) {
      const why = error instanceof TypeError ? "the server of the workbench does not answer" : (error as Error).message;
      byId("saved").textContent = `Not kept yet: ${why}. Trying again.`;
      this.dirty = true;
      this.timer = null;
    }
  }

  /** Resolves when everything done so far lies in the file. */
  kept(): Promise<void> {
    if (!this.dirty && this.sending === null) return Promise.resolve();
    return new Promise((resolve) => {
      this.waiting.push(resolve);
      void this.send();
    });
  }
}
