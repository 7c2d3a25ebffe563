// Keys that bring something out of the room: labels and cards onto paper, everything into files for others. Each asks
// for the file; what it is to be follows from the ending of its name.
import type {Asking} from '../ask/asking.ts';
import type {Binding} from '../bindings.ts';
import type {Sheet, Step, View} from '../sheet.ts';

/** Whose labels, or what card. */
export type LabelSubject = 'lot' | 'sample' | 'specimen' | 'unit' | 'room';

/** Labels for the specimens of a lot or field sample, or for one; of a unit its card. */
export function labelsKey<Own extends Sheet & {readonly code: string}>(
  of: Exclude<LabelSubject, 'room'>,
): Binding<Own, View, Step<Own>> {
  const what = of === 'unit' ? 'card' : 'labels';
  return {
    strokes: ['b'],
    short: what,
    says: of === 'unit' ? 'print its card' : 'print the labels that are not printed yet',
    hint: true,
    act: ({code}) => ({ask: askFor(`${what} of ${code}, to file`, `${what}-${code}.pdf`, of, code)}),
  };
}

/** Labels for every specimen that has none yet. */
export function allLabelsKey<Own extends Sheet>(): Binding<Own, View, Step<Own>> {
  return {
    strokes: ['b'],
    short: 'labels',
    says: 'print all labels that are not printed yet',
    hint: true,
    act: () => ({ask: askFor('labels of all specimens, to file', 'labels.pdf', 'room', '')}),
  };
}

/** The whole room as files for others. */
export function exportKey<Own extends Sheet>(): Binding<Own, View, Step<Own>> {
  return {
    strokes: ['x'],
    short: 'export',
    says: 'write the room out: a Darwin Core archive (.zip), or a folder of CSV tables',
    hint: true,
    act: () => ({
      ask: {
        kind: 'text',
        label: 'export to a .zip for aggregators, or a folder for tables',
        text: 'darwin-core.zip',
        purpose: {for: 'export'},
      },
    }),
  };
}

function askFor(label: string, text: string, of: LabelSubject, code: string): Asking {
  return {kind: 'text', label, text, purpose: {for: 'labels', of, code}};
}
