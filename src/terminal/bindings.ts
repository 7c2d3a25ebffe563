// One table of keys feeds the handler, the bottom line and the list of all keys.
import type {Stroke} from './strokes.ts';
import {nameOf} from './strokes.ts';

export interface Binding<Sheet, View, Step> {
  readonly strokes: readonly Stroke[];
  /** In the bottom line, beside the key. */
  readonly short: string;
  /** In the list of all keys: a full sentence without its stop. */
  readonly says: string;
  /** Stands in the bottom line. */
  readonly hint?: boolean;
  /** Why the key can do nothing now; said when it is pressed. */
  disabled?(sheet: Sheet, view: View): string | undefined;
  act(sheet: Sheet, view: View): Step;
}

/** What a stroke does: a step, the reason why it does nothing now, or nothing known. */
export function press<Sheet, View, Step>(
  bindings: readonly Binding<Sheet, View, Step>[],
  stroke: Stroke,
  sheet: Sheet,
  view: View,
): {readonly step: Step} | {readonly reason: string} | undefined {
  const binding = bindings.find(({strokes}) => strokes.includes(stroke));
  if (binding === undefined) return undefined;
  const reason = binding.disabled?.(sheet, view);
  return reason === undefined ? {step: binding.act(sheet, view)} : {reason};
}

/** What a key is called: "space", "tab", "/". */
export function keyName({strokes}: {readonly strokes: readonly Stroke[]}): string {
  return strokes.map(nameOf).slice(0, 2).join(' ');
}

/** A key as it is listed. */
export interface Named {
  readonly strokes: readonly Stroke[];
  readonly short: string;
  readonly says: string;
  readonly hint?: boolean;
}

/** The hinted keys in lines of at most this width, cut with a sign where there is no more room. */
export function bottomLines(
  bindings: readonly Named[],
  width: number,
  lines: number,
  more: string,
): string[] {
  const said = bindings
    .filter(({hint}) => hint === true)
    .map(one => `${nameOf(one.strokes[0]!)} ${one.short}`);
  const full: string[] = [];
  let now = '';
  for (const [i, words] of said.entries()) {
    const longer = now === '' ? words : `${now}   ${words}`;
    if (longer.length <= width) {
      now = longer;
      continue;
    }
    if (full.length === lines - 1) {
      full.push(i < said.length ? cutWithMore(now, width, more) : now);
      return full;
    }
    full.push(now);
    now = words;
  }
  return [...full, now];
}

function cutWithMore(text: string, width: number, more: string): string {
  const longer = `${text} ${more}`;
  return longer.length <= width ? longer : text;
}
