// Who asks, when, and of which room: what every piece of work needs to know.

export interface Session {
  /** The room's folder. */
  readonly dir: string;
  /** The instant of the question as the person wrote it, to be read in the room's zone; else the clock's. */
  readonly now?: string | undefined;
  /** The name that is written beside every entry. */
  readonly by: string;
  /** Tell the person something beside the answer, such as a clock that runs behind. */
  warn(line: string): void;
}
