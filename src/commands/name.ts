// Which command a command line names.

const GLOBALS_WITH_VALUE = new Set(['--room', '--now', '--by']);

/** The first word that is neither a global option nor the value of one. */
export function commandName(argv: readonly string[]): string | undefined {
  for (let i = 0; i < argv.length; i++) {
    const word = argv[i]!;
    if (GLOBALS_WITH_VALUE.has(word)) i++;
    else if (!word.startsWith('-')) return word;
  }
  return undefined;
}
