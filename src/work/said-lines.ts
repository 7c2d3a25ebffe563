// An answer in words: a title, and lines with a name in the margin. Commands and screens show it alike.

export type SaidLine = readonly [name: string, text: string];

export interface SaidLines {
  readonly title: string;
  readonly lines: readonly SaidLine[];
}
