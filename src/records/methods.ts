// The collecting methods of the trade: how each is spoken of, which fields it has, what is usual, what to mind.
// Usual values are common practice, no source; whoever records says what really stood there.
import {type AgentCaution, agentCautions, cautionOfMedium} from './agents.ts';
import {whenWritten} from './plain-words.ts';
import type {RecordOf} from './schema/index.ts';
import type {Sample} from './state.ts';

export type Method = RecordOf<'sample'>['method'];
type Trap = NonNullable<RecordOf<'sample'>['trap']>;
export type TrapField = keyof Trap;

export interface MethodFacts {
  readonly words: string;
  /** A trap stands by itself for a time; by hand somebody is there; material is taken home with its animals inside. */
  readonly how: 'trap' | 'by hand' | 'material';
  /** Beside those of every trap: when it was emptied before, and how many there were. */
  readonly fields: readonly TrapField[];
  readonly usual: Partial<Trap> & {readonly medium?: RecordOf<'sample'>['medium']};
  /** What is usual, in words. */
  readonly usually: string;
  readonly cautions: readonly string[];
}

const REACH =
  'look before you reach in: snakes, scorpions, large spiders and biting mammals fall into pitfalls too; use tongs and gloves, free vertebrates at once';
const LAMP = 'lamps with ultraviolet light harm eyes; keep mains current out of rain and dew';
const EVERY_MORNING = 'alive: no killing agent or preservative, emptied every morning';

const trapWith = (
  words: string,
  fields: readonly TrapField[],
  usual: MethodFacts['usual'],
  usually: string,
  cautions: readonly string[] = [],
): MethodFacts => ({words, how: 'trap', fields, usual, usually, cautions});
const byHand = (words: string, fields: readonly TrapField[] = [], cautions: readonly string[] = []) =>
  ({words, how: 'by hand', fields, usual: {}, usually: 'brought in alive the same day', cautions}) as const;
const material = (words: string) =>
  ({
    words,
    how: 'material',
    fields: [],
    usual: {},
    usually: 'held in an emergence box until adults appear',
    cautions: [],
  }) as const;

export const methods: Readonly<Record<Method, MethodFacts>> = {
  pitfall: trapWith('pitfall trap', ['bait', 'baitSince', 'acrossCm'], {}, EVERY_MORNING, [REACH]),
  light: trapWith('light trap', ['lamp', 'acrossCm', 'heightM'], {}, EVERY_MORNING, [LAMP]),
  'yellow-pan': trapWith(
    'yellow pan',
    ['acrossCm', 'heightM'],
    {acrossCm: 40, medium: 'water-detergent'},
    'a pan about 40 cm across with water and a little detergent, emptied after two days at most',
  ),
  sticky: trapWith('sticky trap', ['acrossCm', 'heightM'], {}, 'changed every week or two'),
  band: trapWith(
    'corrugated paper band',
    ['widthCm', 'turns', 'heightM'],
    {widthCm: 15, turns: 2},
    'a corrugated paper band about 15 cm wide, wound twice round the trunk',
  ),
  bait: trapWith('baited trap', ['bait', 'baitSince', 'acrossCm', 'heightM'], {}, EVERY_MORNING),
  pheromone: trapWith(
    'pheromone trap',
    ['bait', 'baitSince', 'heightM'],
    {},
    'males only; the lure is changed every four to six weeks',
  ),
  suction: trapWith('suction trap', ['meshMm', 'acrossCm', 'heightM'], {}, EVERY_MORNING),
  window: trapWith('window trap', ['acrossCm', 'heightM'], {}, 'emptied every week'),
  malaise: trapWith('Malaise trap', ['meshMm', 'heightM'], {}, 'emptied every week'),
  search: byHand('search by hand'),
  sweep: byHand('sweep net', ['meshMm', 'acrossCm']),
  beating: byHand('beating', ['acrossCm']),
  'dip-net': byHand('dip net', ['meshMm', 'acrossCm'], ['water and banks: nobody goes alone']),
  'kick-net': byHand('kick net', ['meshMm', 'acrossCm'], ['running water: nobody goes alone']),
  litter: material('litter'),
  wood: material('dead wood'),
  gall: material('galls'),
  fruit: material('fruit or seeds'),
  'leaf-mine': material('leaf mines'),
  other: trapWith(
    'another method',
    ['bait', 'baitSince', 'lamp', 'meshMm', 'acrossCm', 'widthCm', 'turns', 'heightM'],
    {},
    '',
  ),
};

/** Fields that every trap has. */
const OF_EVERY_TRAP: readonly TrapField[] = ['lastEmptied', 'traps'];

/** The fields that a method has. */
export function trapFieldsOf(method: Method): readonly TrapField[] {
  const {how, fields} = methods[method];
  return how === 'trap' ? [...OF_EVERY_TRAP, ...fields] : fields;
}

/** How a trap stood: "10 traps, across 9 cm, last emptied 2026-05-29". Empty where nothing is said. */
export function trapInWords({
  lastEmptied,
  traps,
  bait,
  baitSince,
  lamp,
  meshMm,
  acrossCm,
  widthCm,
  turns,
  heightM,
}: Trap): string {
  const since = baitSince === undefined ? '' : ` since ${baitSince}`;
  return [
    traps && (traps === 1 ? 'one trap' : `${traps} traps`),
    acrossCm && `across ${acrossCm} cm`,
    widthCm && `${widthCm} cm wide`,
    turns && (turns === 1 ? 'wound once' : `wound ${turns} times`),
    meshMm && `mesh ${meshMm} mm`,
    heightM !== undefined && `${heightM} m above the ground`,
    lamp && `lamp ${lamp}`,
    (bait !== undefined || since !== '') && `bait ${bait ?? ''}${since}`,
    lastEmptied && `last emptied ${whenWritten(lastEmptied)}`,
  ]
    .filter(part => typeof part === 'string')
    .join(', ');
}

/** Everything to mind when a sample is taken or worked up: the method's own, then of what the catch fell into. */
export function cautionsOf({method, medium}: Pick<Sample, 'method' | 'medium'>): readonly string[] {
  const agents: (AgentCaution | undefined)[] = [
    cautionOfMedium(medium),
    method === 'sticky' ? agentCautions['toluene and xylene'] : undefined,
  ];
  return [
    ...methods[method].cautions,
    ...agents.flatMap(one => (one === undefined ? [] : [`${one.agent}: ${one.caution}`])),
  ];
}
