// The signs that pictures are drawn with: one set for terminals with Unicode, one in ASCII. All are one cell wide.

export interface Glyphs {
  /** Faint to full. */
  readonly shades: readonly [string, string, string, string];
  readonly now: string;
  readonly closed: string;
  readonly check: string;
  readonly hidden: string;
  readonly rule: string;
  readonly cursor: string;
  readonly ticked: string;
  readonly dot: string;
  /** What was cut off. */
  readonly more: string;
  /** Heights of a bar within one cell, from lowest to full. */
  readonly bars: readonly string[];
  readonly tree: {
    readonly branch: string;
    readonly last: string;
    readonly through: string;
    readonly blank: string;
  };
  readonly window: {
    readonly from: string;
    readonly line: string;
    readonly middle: string;
    readonly to: string;
  };
  readonly axis: string;
  readonly level: string;
  /** Basis of a course: read, filled in, expected. */
  readonly basis: {readonly read: string; readonly filled: string; readonly expected: string};
  /** Draw curves in dots of two by four to the cell. */
  readonly braille: boolean;
  /** A lamp that is on. */
  readonly light: string;
  /** Humidity as one sign a cell, from 0 to 100 %. */
  readonly humidity: readonly string[];
}

export const UNICODE: Glyphs = {
  shades: ['░', '▒', '▓', '█'],
  now: '┃',
  closed: '┊',
  check: '^',
  hidden: '·',
  rule: '─',
  cursor: '▸',
  ticked: '✓',
  dot: '·',
  more: '…',
  bars: ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'],
  tree: {branch: '├─ ', last: '└─ ', through: '│  ', blank: '   '},
  window: {from: '├', line: '─', middle: '┼', to: '┤'},
  axis: '│',
  level: '┄',
  basis: {read: '━', filled: '╌', expected: '·'},
  braille: true,
  light: '▀',
  humidity: ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'],
};

export const ASCII: Glyphs = {
  shades: ['.', ':', '+', '#'],
  now: '|',
  closed: "'",
  check: '^',
  hidden: '-',
  rule: '-',
  cursor: '>',
  ticked: 'x',
  dot: '-',
  more: '~',
  bars: ['.', ':', '+', '#'],
  tree: {branch: '|- ', last: '`- ', through: '|  ', blank: '   '},
  window: {from: '[', line: '-', middle: '+', to: ']'},
  axis: '|',
  level: '-',
  basis: {read: '=', filled: '~', expected: '.'},
  braille: false,
  light: '*',
  humidity: ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9'],
};

/** The set a terminal can show, from its locale: ASCII where it does not say UTF-8, and on a bare console. */
export function glyphsFor(env: Readonly<Record<string, string | undefined>>): Glyphs {
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || '';
  const bare = env.TERM === 'linux' || env.TERM === 'dumb';
  return /utf-?8/i.test(locale) && !bare ? UNICODE : ASCII;
}
