/** The sidebar beside the grid: dist/Sidebar.html in a frame of 300 px that reaches the script over google.script.run only. */

import { makeRunner, type Runner, type RunOptions } from "../standin/run.ts";
import { byId } from "./screen.ts";

declare global {
  interface Window {
    /** Called by the panel's frame as it loads: its google.script. */
    panelBridge: (panel: Window) => { readonly run: Runner; readonly host: { close(): void } };
  }
}

function close(): void {
  document.querySelector("#side iframe")?.remove();
  byId("side").hidden = true;
}

export function setUpPanel(options: RunOptions): void {
  // What arrives late for a panel that was closed meanwhile goes nowhere, as on the host.
  window.panelBridge = (panel) => ({
    run: makeRunner({
      ...options,
      later: (act, delayMs) =>
        options.later(() => {
          if (!panel.closed) act();
        }, delayMs),
    }),
    host: { close },
  });
  byId("side-close").addEventListener("click", close);
}

/** Opening it again loads it anew, as the host does. */
export function openPanel(title: string): void {
  close();
  const frame = document.createElement("iframe");
  frame.title = title;
  frame.src = "/panel";
  byId("side-title").textContent = title;
  byId("side").hidden = false;
  byId("side").append(frame);
}
