/** A panel whose requests go through the real host code to a workbook in memory. */

import { createAsk, type ScriptRun } from "../../sidebar/calls.ts";
import { createPanel, type Panel } from "../../sidebar/panel-state.ts";
import { panelRequest } from "../../src/host/panel.ts";
import { newId } from "../sheet/workbook.ts";
import { FORMULAS } from "./sheet.ts";
import { memoryStorage } from "./world.ts";

function runner(success: (answer: unknown) => void, failure: (error: unknown) => void): ScriptRun {
  return {
    withSuccessHandler: (heard) => runner(heard, failure),
    withFailureHandler: (heard) => runner(success, heard),
    panelRequest: (json) => {
      try {
        success(panelRequest(json));
      } catch (error) {
        failure(error);
      }
    },
  };
}

/** Lets everything that was asked be answered. */
export const answered = (): Promise<void> => new Promise((done) => setImmediate(() => setImmediate(done)));

/** Opens the panel over the workbook whose services are in place, and reads the sheet under this name. */
export async function panelOver(who: string, storage = memoryStorage()): Promise<Panel> {
  const run = runner(
    () => undefined,
    () => undefined,
  );
  const panel = createPanel({
    ask: createAsk(() => run),
    after: (ms, act) => {
      if (ms === 0) setImmediate(act);
      return () => undefined;
    },
    newId,
    nowMs: () => 0,
    storage,
    formulas: FORMULAS,
  });
  panel.setup.name.set(who);
  panel.setup.nameSender.press();
  await answered();
  panel.loading.press();
  await answered();
  return panel;
}
