// The whole window as lines: a pure function of the state.
import type {Line} from '../exchange/pictures/line.ts';
import {type App, topOf} from './app.ts';
import type {Named} from './bindings.ts';
import {isHome} from './homes.ts';
import {everywhere} from './keys/everywhere.ts';
import {LEAST_COLUMNS, LEAST_ROWS, layoutOf} from './layout.ts';
import {pageLines, smallLines} from './page.ts';
import {withPart} from './parts.ts';
import {isCharacter, type Stroke} from './strokes.ts';
import {whenWords} from './when-words.ts';

export function windowLines(app: App): Line[] {
  const layout = layoutOf(app.columns, app.rows);
  if (layout.kind === 'small') return smallLines(plainTasks(app), layout, needWords(app));
  // A home sheet is left by quitting, any other by going back.
  const idle = isHome(topOf(app)) ? 'escape' : 'q';
  return withPart(topOf(app), (part, sheet) =>
    pageLines(part.draw(sheet, app, layout), layout, app, app.said, [
      ...part.keys,
      ...everywhere.filter(
        ({strokes: [stroke]}) => stroke !== idle && !isTaken(stroke!, part.keys, part.typedInto === true),
      ),
    ]),
  );
}

/** The sheet has its own use for the key. */
function isTaken(stroke: Stroke, keys: readonly Named[], typedInto: boolean): boolean {
  return keys.some(({strokes}) => strokes.includes(stroke)) || (typedInto && isCharacter(stroke));
}

function needWords({columns, rows}: App): string {
  const needs = [
    ...(columns < LEAST_COLUMNS ? [`${LEAST_COLUMNS} columns`] : []),
    ...(rows < LEAST_ROWS ? [`${LEAST_ROWS} rows`] : []),
  ].join(' and ');
  return `Needs ${needs}; has ${columns} by ${rows}. q quits.`;
}

function plainTasks({facts: {desk, today}}: App): string[] {
  const open = today.tasks.filter(({state}) => state !== 'done');
  return open.map(task => `${task.unit} ${task.title}: ${whenWords(task, desk.civil, desk.now)}`);
}
