/** Keeps what is being typed while the panel is closed and opened again in the same browser tab. */

import { createStore, type Store } from "./store.ts";

/** The part of the browser's Storage that is used; a sandbox may refuse any of it by throwing. */
export interface DraftStorage {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

/**
 * The storage of this tab, or null where the sandbox refuses it. Of the tab, not of the browser: two tabs
 * that shared one draft would share its id, and the second batch of the two would be taken for the first.
 */
export function tabStorage(): DraftStorage | null {
  try {
    return globalThis.sessionStorage;
  } catch {
    return null;
  }
}

/**
 * A store that is kept under `key`. `read` makes a draft of what was kept, or gives null when that is from
 * another version or damaged; then `fresh` is used.
 */
export function keptStore<T>(
  storage: DraftStorage | null,
  key: string,
  { fresh, read }: { readonly fresh: () => T; readonly read: (kept: unknown) => T | null },
): Store<T> {
  const store = createStore(kept(storage, key, read) ?? fresh());
  store.listen(() => {
    try {
      storage?.setItem(key, JSON.stringify(store.get()));
    } catch {
      // Full or refused: the draft then lives as long as the panel is open.
    }
  });
  return store;
}

function kept<T>(storage: DraftStorage | null, key: string, read: (kept: unknown) => T | null): T | null {
  try {
    const text = storage?.getItem(key) ?? null;
    return text === null ? null : read(JSON.parse(text));
  } catch {
    return null;
  }
}

/** True for a plain object, the outside of every draft. */
export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** The text under `key`, or `otherwise`. */
export function textOf(record: Readonly<Record<string, unknown>>, key: string, otherwise = ""): string {
  const value = record[key];
  return typeof value === "string" ? value : otherwise;
}

/** The texts of a record of texts; anything else in it is dropped. */
export function textsOf(value: unknown): Readonly<Record<string, string>> {
  if (!isRecord(value)) return {};
  const texts: Record<string, string> = {};
  for (const [key, text] of Object.entries(value)) if (typeof text === "string") texts[key] = text;
  return texts;
}

/** What is saved once: its press has an id from the first key on, and after it was saved a change makes it another one. */
export interface SavedOnce {
  /** "" before the first key. */
  readonly id: string;
  readonly saved: boolean;
}

export function editOnce<D extends SavedOnce>(draft: Store<D>, newId: () => string): (step: (now: D) => D) => void {
  return (step) =>
    draft.change((now) => {
      const next = step(now);
      if (next === now || (now.id !== "" && !now.saved)) return next;
      return { ...next, saved: false, id: newId() };
    });
}
