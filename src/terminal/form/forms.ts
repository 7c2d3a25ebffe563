// Every form by its name, and which of them are about what.
import type {Form} from './field.ts';
import * as instruments from './instrument-forms.ts';
import * as lots from './lot-forms.ts';
import * as room from './room-forms.ts';
import * as samples from './sample-forms.ts';
import * as specimens from './specimen-forms.ts';

export const forms = {
  count: lots.count,
  hatch: lots.hatch,
  loss: lots.loss,
  found: lots.found,
  voucher: lots.voucher,
  parasitoid: lots.parasitoid,
  move: lots.move,
  split: lots.split,
  merge: lots.merge,
  weigh: lots.weigh,
  revise: lots.revise,
  close: lots.close,
  sample: samples.sample,
  subsample: samples.subsample,
  bycatch: samples.bycatch,
  sorting: samples.sorting,
  'take-out': samples.takeOut,
  lot: samples.lot,
  extremes: instruments.extremes,
  identify: specimens.identify,
  prepare: specimens.prepare,
  imago: specimens.imago,
  setting: room.setting,
  void: specimens.voidEntry,
  correct: specimens.correctEntry,
} as const satisfies Readonly<Record<string, Form>>;

export type FormName = keyof typeof forms;

/** What forms are about: a lot, field sample or specimen, or nothing that is there yet. */
export type Subject = 'lot' | 'sample' | 'specimen' | 'room';

export interface Act {
  readonly key: string;
  readonly form: FormName;
  readonly says: string;
}

const WRONG: readonly Act[] = [
  {key: 'y', form: 'correct', says: 'an entry was wrong, and this is right'},
  {key: 'z', form: 'void', says: 'an entry was wrong'},
];

export const acts: Readonly<Record<Subject, readonly Act[]>> = {
  lot: [
    {key: 'c', form: 'count', says: 'animals counted by stage'},
    {key: 'h', form: 'hatch', says: 'larvae or nymphs hatched'},
    {key: 'l', form: 'loss', says: 'animals died, escaped, were given away'},
    {key: 'f', form: 'found', says: 'animals found beyond those known'},
    {key: 'v', form: 'voucher', says: 'an immature preserved as evidence'},
    {key: 'p', form: 'parasitoid', says: 'parasitoids or hyperparasitoids came out'},
    {key: 'w', form: 'weigh', says: 'a weight or photograph, of the lot or of one animal'},
    {key: 'm', form: 'move', says: 'moves to another unit'},
    {key: 's', form: 'split', says: 'a part becomes a lot of its own'},
    {key: 'i', form: 'merge', says: 'joins another lot of the sample'},
    {key: 'r', form: 'revise', says: 'its name, what it may be or what it needs is known better'},
    {key: 'e', form: 'lot', says: 'eggs laid here begin a lot'},
    {key: 'x', form: 'close', says: 'is finished'},
    ...WRONG,
  ],
  sample: [
    {key: 'l', form: 'lot', says: 'a lot begins from it'},
    {key: 's', form: 'subsample', says: 'a part of it is sorted by itself'},
    {key: 'b', form: 'bycatch', says: 'what else was in the trap'},
    {key: 'o', form: 'sorting', says: 'how far it is sorted'},
    {key: 'v', form: 'take-out', says: 'taken out dead and preserved'},
    ...WRONG,
  ],
  specimen: [
    {key: 'i', form: 'identify', says: 'its name'},
    {key: 'p', form: 'prepare', says: 'killed, prepared, stored'},
    {key: 'm', form: 'imago', says: 'a subimago has moulted to the imago'},
    {key: 'e', form: 'lot', says: 'eggs she laid begin a lot'},
    ...WRONG,
  ],
  room: [
    {key: 's', form: 'sample', says: 'a field sample was brought in'},
    {
      key: 'h',
      form: 'setting',
      says: 'what holds for the room: finished lots learned from or not, midsummer',
    },
    ...WRONG,
  ],
};
