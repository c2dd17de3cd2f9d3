/** Gathers the sentences of a request: each once, and no more of a kind than a person would read. */

/** Of one tab; what comes after is only counted. */
const SHOWN_PER_TAB = 8;

export interface Sentences {
  /** `about` is the tab, "" for none. */
  add(about: string, sentence: string): void;
  all(): string[];
}

export function gatherSentences(): Sentences {
  const shown = new Map<string, string[]>();
  const hidden = new Map<string, number>();
  return {
    add(about, sentence) {
      const here = shown.get(about) ?? [];
      shown.set(about, here);
      if (here.includes(sentence)) return;
      if (here.length < SHOWN_PER_TAB) here.push(sentence);
      else hidden.set(about, (hidden.get(about) ?? 0) + 1);
    },
    all() {
      return [...shown].flatMap(([about, sentences]) => {
        const more = hidden.get(about) ?? 0;
        const left = more === 0 ? [] : [`${about} has ${more} more like this. Mend these first, then load again.`];
        return [...sentences, ...left];
      });
    },
  };
}
