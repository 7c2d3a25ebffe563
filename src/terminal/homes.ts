// The two home sheets as they are first opened.
import type {Sheet, SheetOf} from './sheet.ts';

export const roundHome: SheetOf<'round'> = {kind: 'round', cursor: undefined, ticked: []};
export const threadsHome: SheetOf<'threads'> = {
  kind: 'threads',
  cursor: undefined,
  shift: 0,
  daysPerColumn: 1,
};

export function isHome({kind}: Sheet): boolean {
  return kind === 'round' || kind === 'threads';
}
