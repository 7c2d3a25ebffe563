// A count of all that found fewer than are alive: what became of the others, as the one who counted says.
import {isHidden} from '../records/fold-lots.ts';
import {type Stage, total} from '../records/stage.ts';
import type {Lot, RoomState} from '../records/state.ts';

export const WHEREABOUTS = ['cannibalised', 'not-found', 'miscounted'] as const;
export type Whereabouts = (typeof WHEREABOUTS)[number];

export interface Counted {
  readonly lot: string;
  readonly stages: Readonly<Record<Stage, number>>;
  readonly at?: string | undefined;
}

/** How many of those alive a count leaves open; 0 where animals are hidden, and nobody knows. */
export function leftOpen(lot: Lot | undefined, counted: Counted['stages']): number {
  return lot === undefined || isHidden(lot) ? 0 : Math.max(0, total(lot.alive) - total(counted));
}

/**
 * The records of such a count. Those that were eaten or not found are lost, with the reason; where the count itself is
 * doubted it stays as it was seen, of a part of them, and no number changes.
 * Where all are accounted for it is a count like any other.
 */
export function accountedFor(
  counted: Counted,
  whereabouts: Whereabouts,
  why: string | undefined,
  {lots}: Pick<RoomState, 'lots'>,
): object[] {
  const {lot: code, stages, at} = counted;
  const lot = lots.get(code);
  const missing = leftOpen(lot, stages);
  const when = at === undefined ? {} : {at};
  const count = {record: 'count', lot: code, stages, ...when, complete: whereabouts !== 'miscounted'};
  if (lot === undefined || missing === 0) return [{...count, complete: true}];
  const note = why ?? whereabouts.replace('-', ' ');
  if (whereabouts === 'miscounted')
    return [
      count,
      {record: 'note', about: code, ...when, text: `${missing} not accounted for, miscounted: ${note}`},
    ];
  const fewer = Object.entries(lot.alive).filter(([stage, alive]) => alive > (stages[stage] ?? 0));
  const [stage] = fewer.length === 1 ? fewer[0]! : [undefined];
  const cause = whereabouts === 'cannibalised' ? 'eaten' : 'missing';
  return [
    {
      record: 'loss',
      lot: code,
      count: missing,
      cause,
      note,
      ...when,
      ...(stage === undefined ? {} : {stage}),
    },
    count,
  ];
}
