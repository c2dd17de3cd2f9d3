/** Writes what a meter read in a standard into the Meter log. */

import { checkNumber } from "../core/reading.ts";
import { METER_LOG } from "../sheet/log-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import type { MeterEntry, ReplyFor, RequestFor } from "./contract.ts";
import { append, checkEc, dayCell, textCell } from "./logging.ts";
import type { Me } from "./me.ts";

function checked(value: number, meter: MeterEntry["meter"], what: string): number {
  return meter === "pH" ? checkNumber(value, { what, min: 0, max: 14 }) : (checkEc(value, what) ?? value);
}

export function logMeter(workbook: WorkbookPort, me: Me, request: RequestFor<"log meter">): ReplyFor<"log meter"> {
  const { id, day, meter, standard, reading, tempC, calibrated, note } = request.entry;
  const record = {
    Id: id,
    Date: dayCell(day),
    Meter: meter,
    Standard: checked(standard, meter, "The standard"),
    Reading: checked(reading, meter, "The reading"),
    "Temp C": tempC,
    Calibrated: calibrated ? "yes" : "no",
    Who: textCell(request.who === "" ? me.name : request.who),
    Note: textCell(note),
  };
  return append(workbook, METER_LOG, [record]);
}
