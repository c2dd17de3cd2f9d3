/** Tools of the household written into Settings: numbers as numbers, texts as texts, a row that is missing added. */

import { describe, expect, test } from "vitest";
import type { RequestFor } from "../../src/app/contract.ts";
import { readyBook } from "../sheet/workbook.ts";
import { load } from "./book.ts";

type Kept = RequestFor<"save settings">["settings"];
const save = (...settings: Kept) => ({ ask: "save settings", settings }) as const;

describe("tools kept from the panel", () => {
  test("stand beside their settings, and the next load brings them", () => {
    const book = readyBook();
    const { settings } = book.reply(
      save(
        { setting: "Scale step g", value: "0.01" },
        { setting: "Spoons", value: "Epsom salt: 1.1 g; “Salt”: 2 g" },
        { setting: "Scale most g", value: "" },
      ),
    );
    expect(settings["Scale step g"]).toBe("0.01");
    expect(load(book).settings).toEqual(settings);
    const row = book.values("Settings").find(([name]) => name === "Scale step g");
    expect(row?.[1]).toBe(0.01);
  });

  test("a formula typed as a setting stays a text", () => {
    const book = readyBook();
    book.reply(save({ setting: "Spoons", value: "=1+1" }));
    expect(book.values("Settings").find(([name]) => name === "Spoons")?.[1]).toBe("=1+1");
  });

  test("a row that somebody deleted is added again, once; what is there already is not written", () => {
    const book = readyBook({
      tabs: {
        Settings: {
          cells: [
            ["Setting", "Value"],
            ["Scale step g", 0.1],
          ],
        },
      },
    });
    const kept = save(
      { setting: "Stock solutions", value: "A: 5 g in 100 mL" },
      { setting: "Scale step g", value: "0.1" },
    );
    book.reply(kept);
    book.calls.length = 0;
    book.reply(kept);
    expect(book.calls.filter((name) => name.startsWith("Range.set"))).toEqual([]);
    expect(book.values("Settings").filter(([name]) => name === "Stock solutions")).toHaveLength(1);
  });

  test("spaces around a value are left out, and make no second write", () => {
    const book = readyBook();
    expect(book.reply(save({ setting: "Spoons", value: " Salt: 2 g " })).settings.Spoons).toBe("Salt: 2 g");
    expect(book.values("Settings").find(([name]) => name === "Spoons")?.[1]).toBe("Salt: 2 g");
    book.calls.length = 0;
    book.reply(save({ setting: "Spoons", value: "  Salt: 2 g" }));
    expect(book.calls.filter((name) => name.startsWith("Range.set"))).toEqual([]);
  });

  test("any other setting is refused", () => {
    const { sentence } = readyBook().refusal({ ask: "save settings", settings: [{ setting: "Today", value: "1" }] });
    expect(sentence).toContain("setting");
  });
});
