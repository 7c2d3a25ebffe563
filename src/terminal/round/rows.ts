// The lines of the round: places in walking order, under each what is to be done there; what is amiss comes last.
import type {Task} from '../../care/task.ts';
import type {View} from '../sheet.ts';

type Alert = View['facts']['today']['alerts'][number];

export type RoundRow =
  | {readonly kind: 'place'; readonly text: string}
  | {readonly kind: 'alert'; readonly id: string; readonly alert: Alert}
  | {readonly kind: 'task'; readonly id: string; readonly task: Task; readonly done: boolean};

export type RowWithId = Exclude<RoundRow, {readonly kind: 'place'}>;

export function roundRows({facts: {today}, lately}: View): RoundRow[] {
  const rows: RoundRow[] = [];
  for (const {place, tasks} of today.places) {
    const shown = tasks.filter(({state, id}) => state !== 'done' || lately.has(id));
    if (shown.length > 0) rows.push({kind: 'place', text: place});
    for (const task of shown) rows.push({kind: 'task', id: task.id, task, done: task.state === 'done'});
  }
  if (today.alerts.length > 0) rows.push({kind: 'place', text: 'amiss'});
  for (const alert of today.alerts) rows.push({kind: 'alert', id: alert.id, alert});
  return rows;
}

/** Rows that the cursor stops at. */
export function stops(rows: readonly RoundRow[]): RowWithId[] {
  return rows.filter(row => row.kind !== 'place');
}

/** The row under the cursor: the one named, else the first open task, else the first stop. */
export function current(rows: readonly RoundRow[], cursor: string | undefined): RowWithId | undefined {
  const all = stops(rows);
  return all.find(({id}) => id === cursor) ?? all.find(row => row.kind === 'task' && !row.done) ?? all[0];
}
