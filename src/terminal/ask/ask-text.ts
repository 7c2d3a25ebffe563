// Texts that several sheets ask for alike: a note, and a reading by hand.
import {valueAt} from '../../records/state.ts';
import type {Desk} from '../../work/desk.ts';
import {formSheet} from '../form/form.ts';
import type {Step} from '../sheet.ts';
import type {Asking} from './asking.ts';

/** A remark about a lot, unit or field sample. */
export function askNote(about: string): Asking {
  return {kind: 'text', label: `note about ${about}`, text: '', purpose: {for: 'note', about}};
}

/** What somebody reads off: the two values of a minimum–maximum thermometer, else a temperature and a humidity. */
export function askReading({state, now}: Desk, logger: string): Pick<Step, 'ask' | 'open'> {
  const history = state.loggers.get(logger);
  if (history !== undefined && valueAt(history, now).kind === 'extremes')
    return {open: formSheet('extremes', logger)};
  return {
    ask: {kind: 'text', label: `${logger} °C, and % humidity`, text: '', purpose: {for: 'reading', logger}},
  };
}

/** How much warmer the animals of a unit are than its logger. */
export function askOffset(unit: string, logger: string): Asking {
  const label = `how much warmer than ${logger}, °C (0: as it reads)`;
  return {kind: 'text', label, text: '', purpose: {for: 'offset', unit}};
}

/** A file of a logger to be imported. */
export function askFile(logger: string): Asking {
  return {kind: 'text', label: `file of ${logger} to import`, text: '', purpose: {for: 'import', logger}};
}

/** The logger or thermometer that stands for a unit now; undefined where it has none. */
export function loggerOfUnit({state, now}: Desk, unit: string): string | undefined {
  const history = state.units.get(unit);
  return history === undefined ? undefined : valueAt(history, now).logger;
}
