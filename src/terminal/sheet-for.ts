// The sheet that shows a thing of a kind.
import type {Sheet} from './sheet.ts';

export function sheetFor(kind: 'sample' | 'lot' | 'specimen' | 'unit', code: string): Sheet {
  return kind === 'unit' ? {kind, code, span: 'week', shift: 0, scroll: 0} : {kind, code, scroll: 0};
}
