/** Starts the panel in the page that the host opens beside the sheet. */

import { render } from "preact";
import { createAsk, hostRun } from "./calls.ts";
import { tabStorage } from "./drafts.ts";
import { readFormulas } from "./formulas.ts";
import { idMadeAt } from "./ids.ts";
import { PanelView } from "./panel.tsx";
import { createPanel } from "./panel-state.ts";
import { afterInBrowser } from "./sending.ts";

/** Unix time; which day it is, only the sheet says. */
const nowMs = (): number => performance.timeOrigin + performance.now();

const place = document.getElementById("panel");
if (place !== null) {
  const panel = createPanel({
    ask: createAsk(hostRun),
    after: afterInBrowser,
    newId: () => idMadeAt(nowMs()),
    nowMs,
    storage: tabStorage(),
    formulas: readFormulas(document.getElementById("formulas")?.textContent),
  });
  render(<PanelView panel={panel} />, place);
  panel.loading.press();
}
