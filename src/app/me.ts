/** The person at the panel: a name of their own, kept for them alone. */

export interface Me {
  /** "" until they gave one. */
  readonly name: string;
  saveName(name: string): void;
  /** Whether a name was sent to be kept, whatever became of it. */
  begun(): boolean;
}
