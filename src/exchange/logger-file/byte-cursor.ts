// Fixed-form numbers, dates and times of day read straight from bytes. Whatever has another form is left to rows.ts:
// every method answers NaN or -1 then, and the row is read again, slowly.

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
const LETTER_T = 84;
const LETTER_Z = 90;

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

  constructor(
    readonly bytes: Uint8Array,
    readonly delimiter: number,
  ) {}

  /** Goes to the end of the row and past it; a quote makes the row an odd one. */
  skipRow(): boolean {
    const {bytes} = this;
    let at = this.at;
    for (let byte = bytes[at]!; byte !== LF; byte = bytes[++at]!) if (byte === QUOTE) return false;
    this.at = at + 1;
    return true;
  }

  /** Goes to the end of the cell; a quote makes the row an odd one. */
  skipCell(): boolean {
    const {bytes, delimiter} = this;
    let at = this.at;
    for (let byte = bytes[at]!; byte !== delimiter && byte !== LF; byte = bytes[++at]!)
      if (byte === QUOTE) return false;
    this.at = at;
    return true;
  }

  /** At the end of a cell, blanks before it passed over. */
  atCellEnd(): boolean {
    const {bytes} = this;
    while (bytes[this.at] === SPACE) this.at++;
    const byte = bytes[this.at];
    return byte === this.delimiter || byte === LF || (byte === CR && bytes[this.at + 1] === LF);
  }

  /** A decimal number that fills its cell, with point or comma. */
  decimal(): number {
    const {bytes, delimiter} = this;
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
    if (digits === 0 || digits > MOST_DIGITS || !this.atCellEnd()) return Number.NaN;
    if (afterPoint >= 0) value /= POWERS[digits - afterPoint]!;
    return negative ? -value : value;
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

  /** Passes over a byte, if it is the next one. */
  pass(byte: number): boolean {
    if (this.bytes[this.at] !== byte) return false;
    this.at++;
    return true;
  }

  /** Passes over what separates the numbers of a date: "-", "." or "/"; 0 where it is none of them. */
  dateSeparator(): number {
    const byte = this.bytes[this.at]!;
    if (byte !== MINUS && byte !== POINT && byte !== SLASH) return 0;
    this.at++;
    return byte;
  }

  /** Passes over the T or the one blank between date and time. */
  betweenDateAndClock(): boolean {
    return this.pass(LETTER_T) || this.pass(SPACE);
  }

  /** A 24-hour time of day that fills its cell, in milliseconds; sets offsetMs. */
  clock(): number {
    const hours = this.whole();
    if (hours < 0 || hours > 23 || this.width > 2 || !this.pass(COLON)) return Number.NaN;
    const minutes = this.whole();
    if (minutes < 0 || minutes > 59 || this.width !== 2) return Number.NaN;
    let ms = (hours * 60 + minutes) * 60_000;
    if (this.pass(COLON)) {
      const seconds = this.whole();
      if (seconds < 0 || seconds > 59 || this.width !== 2) return Number.NaN;
      ms += seconds * 1000;
      if (this.pass(POINT)) {
        const fraction = this.whole();
        if (fraction < 0 || this.width > 9) return Number.NaN;
        ms += Math.round((fraction / POWERS[this.width]!) * 1000);
      }
    }
    this.offsetMs = Number.NaN;
    if (this.atCellEnd()) return ms;
    this.offsetMs = this.#offset();
    return Number.isNaN(this.offsetMs) || !this.atCellEnd() ? Number.NaN : ms;
  }

  #offset(): number {
    if (this.pass(LETTER_Z)) return 0;
    const west = this.bytes[this.at] === MINUS;
    if (!west && this.bytes[this.at] !== PLUS) return Number.NaN;
    this.at++;
    const hours = this.whole();
    if (this.width !== 2 || !this.pass(COLON)) return Number.NaN;
    const minutes = this.whole();
    if (this.width !== 2 || minutes > 59 || hours > 17) return Number.NaN;
    const ms = (hours * 60 + minutes) * 60_000;
    return west ? -ms : ms;
  }
}
