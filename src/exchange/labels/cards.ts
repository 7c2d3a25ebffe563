// Cards that stand at a cage, a box, an aquarium, a jar or a pot: what is in it, and where that came from. They tell
// only what stays true; numbers change.
import type {Civil} from '../../records/civil.ts';
import type {Lot, RoomState, Sample} from '../../records/state.ts';
import {openLots, valueAt} from '../../records/state.ts';
import {dataLines} from './data-label.ts';
import type {SetLine} from './fit.ts';
import {labelDay} from './label-dates.ts';

export interface Card {
  /** The code that it carries. */
  readonly code: string;
  readonly lines: readonly SetLine[];
}

/** A unit with the lots that live in it now. */
export function unitCard(code: string, state: RoomState, civil: Civil): Card {
  const {type, place} = valueAt(state.units.get(code)!, state.asOf);
  const lots = openLots(state).filter(({stays}) => stays.at(-1)?.unit === code);
  return {
    code,
    lines: [
      {text: `${type.replace('-', ' ')}, ${place}`},
      ...lots.flatMap((lot): SetLine[] => {
        const [name, ...rest] = [`${lot.code} ${whatIn(lot)}`.trim(), ...lotLines(lot, state, civil)];
        return [{text: name!, weight: 'bold'}, ...rest.map(text => ({text}))];
      }),
    ],
  };
}

/** A lot: in a jar or vial, or while it moves. */
export function lotCard(code: string, state: RoomState, civil: Civil): Card {
  const lot = state.lots.get(code)!;
  const lines = [whatIn(lot), ...lotLines(lot, state, civil)].filter(line => line !== '');
  return {code, lines: lines.map(text => ({text}))};
}

/** A field sample: one for every container it is in. */
export function sampleCard(code: string, {samples}: RoomState): Card {
  const sample = samples.get(code)!;
  const lines = [...dataLines(sample), ...(sample.host === undefined ? [] : [`on ${sample.host}`])];
  return {code, lines: lines.map(text => ({text}))};
}

function whatIn({taxon, material}: Lot): string {
  const hidden =
    material === undefined ? undefined : `${material.amount} ${material.unit} of ${material.what}`;
  return [taxon, hidden].filter(part => part !== undefined).join(', ');
}

/** In few words: the rest stands on the card of the field sample. */
function lotLines({sample, startedAt}: Lot, {samples}: RoomState, civil: Civil): string[] {
  const source = samples.get(sample);
  const since = `reared since ${labelDay(civil.dayOf(startedAt))}`;
  return [
    ...(source === undefined ? [`sample ${sample}`] : sourceLines(source)),
    source?.host === undefined ? since : `on ${source.host}, ${since}`,
  ];
}

function sourceLines(sample: Sample): string[] {
  const caught = dataLines(sample).filter(line => /^(coll|leg)\. /.test(line));
  return [
    [`sample ${sample.code}`, sample.place?.locality].filter(part => part !== undefined).join(', '),
    caught.join(', '),
  ];
}
