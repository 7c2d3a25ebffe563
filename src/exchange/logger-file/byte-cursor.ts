// Numbers, dates and times of day of the usual forms, read straight from bytes. Whatever has another form is left to
// rows.ts: every method answers NaN, -1 or false then, and the row is read again, slowly.

const LF = 10;
const CR = 13;
const SPACE = 32;
const QUOTE = 34;
const PLUS = 43;
const COMMA = 44;
const MINUS = 45;
const POINT = 46;
const SLASH = 47;
const ZERO = 48;
const COLON = 58;
const LETTER_A = 65;
const LETTER_M = 77;
const LETTER_P = 80;
const LETTER_T = 84;
const LETTER_Z = 90;
/** Makes a letter a capital. */
const CAPITAL = 0b1101_1111;

/** Digits that a double holds exactly. */
const MOST_DIGITS = 15;
const POWERS = Float64Array.from({length: MOST_DIGITS + 1}, (_, power) => 10 ** power);

/** Reads forward through a block whose last byte is a line feed, so that no bound needs a check. */
export class ByteCursor {
  at = 0;
  /** The offset of the last clock that was read, in milliseconds; NaN where it had none. */
  offsetMs = Number.NaN;
  /** How many digits the last whole number had. */
  width = 0;
  #quoted = false;

  constructor(
    readonly bytes: Uint8Array,
    readonly delimiter: number,
  ) {}

  /** Begins a cell that is to be read. */
  open(): void {
    this.#quoted = this.#pass(QUOTE);
  }

  /** Ends it. */
  close(): boolean {
    return this.atEnd() && (!this.#quoted || this.#pass(QUOTE));
  }

  /** Blanks passed over, at the end of what the cell holds. */
  atEnd(): boolean {
    while (this.bytes[this.at] === SPACE) this.at++;
    return this.#quoted
      ? this.bytes[this.at] === QUOTE && this.#endsCell(this.at + 1)
      : this.#endsCell(this.at);
  }

  /** Goes over a cell and the delimiter behind it. */
  skipCell(): boolean {
    return this.#skipText() && this.#pass(this.delimiter);
  }

  /** Goes over the delimiter. */
  nextCell(): boolean {
    return this.#pass(this.delimiter);
  }

  /** Goes over the rest of the row. */
  skipRow(): boolean {
    while (this.bytes[this.at] !== LF) {
      if (!this.#pass(this.delimiter) && !this.#pass(CR)) return false;
      if (!this.#skipText()) return false;
    }
    this.at++;
    return true;
  }

  /** A decimal number, with point or comma. */
  decimal(): number {
    const {bytes} = this;
    const delimiter = this.#quoted ? QUOTE : this.delimiter;
    let at = this.at;
    while (bytes[at] === SPACE) at++;
    const negative = bytes[at] === MINUS;
    if (negative) at++;
    let value = 0;
    let digits = 0;
    let afterPoint = -1;
    for (; ; at++) {
      const byte = bytes[at]!;
      const digit = byte - ZERO;
      if (digit >= 0 && digit <= 9) {
        value = value * 10 + digit;
        digits++;
      } else if (afterPoint < 0 && byte !== delimiter && (byte === POINT || byte === COMMA))
        afterPoint = digits;
      else break;
    }
    this.at = at;
    if (digits === 0 || digits > MOST_DIGITS) return Number.NaN;
    if (afterPoint >= 0) value /= POWERS[digits - afterPoint]!;
    return negative ? -value : value;
  }

  /** Whether just this text stands ahead; passes over it. */
  textIs(text: Uint8Array): boolean {
    for (let i = 0; i < text.length; i++) if (this.bytes[this.at + i] !== text[i]) return false;
    this.at += text.length;
    return true;
  }

  /** The digits ahead as a number, -1 where there are none. */
  whole(): number {
    const {bytes} = this;
    let at = this.at;
    let value = 0;
    for (let digit = bytes[at]! - ZERO; digit >= 0 && digit <= 9; digit = bytes[++at]! - ZERO)
      value = value * 10 + digit;
    this.width = at - this.at;
    this.at = at;
    return this.width === 0 || this.width > MOST_DIGITS ? -1 : value;
  }

  /** Passes over what separates the numbers of a date: "-", "." or "/"; 0 where it is none of them. */
  dateSeparator(): number {
    const byte = this.bytes[this.at]!;
    if (byte !== MINUS && byte !== POINT && byte !== SLASH) return 0;
    this.at++;
    return byte;
  }

  /** Passes over the T or the blanks between date and time. */
  betweenDateAndClock(): boolean {
    if (this.#pass(LETTER_T)) return true;
    const start = this.at;
    while (this.#pass(SPACE));
    return this.at > start;
  }

  /** A time of day in milliseconds; sets offsetMs. */
  clock(): number {
    this.offsetMs = Number.NaN;
    let hours = this.whole();
    if (hours < 0 || hours > 23 || this.width > 2 || !this.#pass(COLON)) return Number.NaN;
    const minutes = this.#sixtieth();
    if (minutes < 0) return Number.NaN;
    let ms = minutes * 60_000;
    if (this.#pass(COLON)) {
      const seconds = this.#sixtieth();
      if (seconds < 0) return Number.NaN;
      ms += seconds * 1000;
      if (this.#pass(POINT)) {
        const fraction = this.whole();
        if (fraction < 0 || this.width > 9) return Number.NaN;
        ms += Math.round((fraction / POWERS[this.width]!) * 1000);
      }
    }
    if (!this.atEnd()) {
      const half = this.bytes[this.at]! & CAPITAL;
      if (half === LETTER_A || half === LETTER_P) hours = this.#hourOfHalf(hours, half);
      else this.offsetMs = this.#offset();
      if (!this.atEnd()) return Number.NaN;
    }
    return hours * 3_600_000 + ms;
  }

  #hourOfHalf(hours: number, half: number): number {
    if ((this.bytes[this.at + 1]! & CAPITAL) !== LETTER_M || hours < 1 || hours > 12) return Number.NaN;
    this.at += 2;
    return (hours % 12) + (half === LETTER_P ? 12 : 0);
  }

  #sixtieth(): number {
    const value = this.whole();
    return this.width === 2 && value < 60 ? value : -1;
  }

  #offset(): number {
    if (this.#pass(LETTER_Z)) return 0;
    const west = this.bytes[this.at] === MINUS;
    if (!west && this.bytes[this.at] !== PLUS) return Number.NaN;
    this.at++;
    const hours = this.whole();
    if (this.width !== 2 || hours > 17 || !this.#pass(COLON)) return Number.NaN;
    const minutes = this.#sixtieth();
    if (minutes < 0) return Number.NaN;
    const ms = (hours * 60 + minutes) * 60_000;
    return west ? -ms : ms;
  }

  /** Goes to the end of a cell; quotes inside make the row an odd one. */
  #skipText(): boolean {
    const {bytes, delimiter} = this;
    let at = this.at;
    const quoted = bytes[at] === QUOTE;
    if (quoted) at++;
    const end = quoted ? QUOTE : delimiter;
    for (let byte = bytes[at]!; byte !== end && byte !== LF; byte = bytes[++at]!)
      if (byte === QUOTE) return false;
    this.at = quoted ? at + 1 : at;
    return !quoted || (bytes[at] === QUOTE && this.#endsCell(at + 1));
  }

  #endsCell(at: number): boolean {
    const byte = this.bytes[at];
    return byte === this.delimiter || byte === LF || (byte === CR && this.bytes[at + 1] === LF);
  }

  #pass(byte: number): boolean {
    if (this.bytes[this.at] !== byte) return false;
    this.at++;
    return true;
  }
}
