// What the screens bring out of the room, written to files, and what is said of it.
import {extname, resolve} from 'node:path';
import {printCards} from '../../work/cards.ts';
import {exportDarwinCore} from '../../work/darwin-core.ts';
import {printLabels} from '../../work/labels.ts';
import type {Session} from '../../work/session.ts';
import {exportTables} from '../../work/tables.ts';
import type {LabelSubject} from './out-keys.ts';

/** Labels or a card, printed to a file. @throws Refusal where they cannot be */
export async function writeLabels(
  session: Session,
  {of, code, file}: {readonly of: LabelSubject; readonly code: string; readonly file: string},
): Promise<string> {
  if (of === 'unit') {
    await printCards(session, {units: [code]}, file);
    return `The card of ${code} is in ${resolve(file)}.`;
  }
  const whose = {lots: of === 'lot' ? [code] : [], samples: of === 'sample' ? [code] : []};
  const specimens = of === 'specimen' ? [code] : [];
  const {labels, passedOver, changed} = await printLabels(session, {...whose, specimens}, file);
  if (labels === 0) {
    const before = passedOver === 0 ? 'there is nothing to label' : `all ${passedOver} were printed before`;
    return `No label was printed: ${before}; teneral labels --again prints them again.`;
  }
  const anew = changed === 0 ? '' : ` ${changed} say something else than before: take the old off.`;
  return `${labels} ${labels === 1 ? 'label is' : 'labels are'} in ${resolve(file)}; print at 100 %.${anew} u forgets that they were printed.`;
}

/** The whole room, by the ending of the name. @throws Refusal where it cannot be written */
export async function writeRoom(session: Session, path: string): Promise<string> {
  const isArchive = extname(path).toLowerCase() === '.zip';
  const {rows} = isArchive ? await exportDarwinCore(session, path, {}) : await exportTables(session, path);
  const told = Object.entries(rows).map(([file, count]) => `${count} in ${file}`);
  return `Written to ${resolve(path)}: ${told.join(', ')}.`;
}
