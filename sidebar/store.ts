/** A value that tells its readers when it changes: the panel's state lives here, outside the components. */

export interface Store<T> {
  get(): T;
  set(next: T): void;
  change(step: (now: T) => T): void;
  /** Calls `heard` after every change; returns how to stop. */
  listen(heard: () => void): () => void;
}

export function createStore<T>(first: T): Store<T> {
  let now = first;
  const listeners = new Set<() => void>();
  const set = (next: T): void => {
    if (Object.is(next, now)) return;
    now = next;
    for (const heard of [...listeners]) heard();
  };
  return {
    get: () => now,
    set,
    change: (step) => set(step(now)),
    listen: (heard) => {
      listeners.add(heard);
      return () => listeners.delete(heard);
    },
  };
}
