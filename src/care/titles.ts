// What a task is called, in plain words.
import {isHidden} from '../records/fold-lots.ts';
import {counted, materialInWords} from '../records/plain-words.ts';
import {animalsInWords, listed} from '../records/stage-words.ts';
import type {Lot} from '../records/state.ts';
import type {Job} from './job.ts';
import {eats, isStage} from './stages.ts';

/** "feed 18 larvae", "look for adults: 11 pupae", "change water". */
export function titleOf({rule: {task}, lot}: Job): string {
  const plain = plainTitles[task] ?? task;
  if (lot === undefined) return plain;
  switch (task) {
    case 'feed':
      return `feed ${animalsOf(lot, eats) || 'the animals'}`;
    case 'give-water':
      return `give water to ${animalsOf(lot, eats) || 'the animals'}`;
    case 'look':
      return `${plain}: ${animalsOf(lot) || 'not counted'}`;
    case 'inspect':
      return `${plain} ${animalsOf(lot) || 'the animals'}`;
    case 'move-pupae':
      return `move ${animalsOf(lot, stage => stage === 'pupa' || stage === 'prepupa') || 'the pupae'}`;
    case 'label':
      return `label ${specimensOf(lot)}`;
    case 'close':
      return `close lot ${lot.code}`;
    default:
      return plain;
  }
}

/** "change water, 4 of 12 litres" */
export function withAmount({
  title,
  amount,
}: {
  readonly title: string;
  readonly amount: string | null;
}): string {
  return amount === null ? title : `${title}, ${amount}`;
}

/** "27 adults and 1 other specimen": each adult has a code, the others are parasitoids and vouchers. */
function specimensOf({specimens, tally: {emerged}}: Lot): string {
  const others = specimens.length - emerged;
  if (emerged === 0) return counted(others, 'specimen');
  return listed([counted(emerged, 'adult'), ...(others > 0 ? [counted(others, 'other specimen')] : [])]);
}

const plainTitles: Readonly<Record<string, string>> = {
  clean: 'clean',
  'change-water': 'change water',
  'top-up': 'top up the water',
  moisten: 'moisten',
  'check-air': 'check the air supply',
  look: 'look for adults',
  inspect: 'look over',
  'freeze-waste': 'freeze the waste',
  'clean-out': 'clean out, free for another lot',
  'part-pupae': 'part pupae from feeders',
  'ready-exit': 'ready the exit for adults',
  'tend-subimago': 'move the subimago dry, look for the imago',
  collect: 'collect hardened adults',
  'bring-out': 'decide: out of the cold?',
  'check-cold': 'check the cold: mould, condensation',
  'look-at-mould': 'look at the mould again',
};

/** "18 larvae", "about 200 larvae", "40 galls"; empty where nothing is known. Instars are not told apart here. */
export function animalsOf(lot: Lot, suits: (stage: string) => boolean = () => true): string {
  if (lot.material !== undefined) return materialInWords(lot.material);
  const suiting = Object.keys(lot.alive).filter(suits);
  const parts = kinds.flatMap(kind => {
    let count = 0;
    for (const stage of suiting) if (isStage(stage, kind)) count += lot.alive[stage]!;
    return count === 0 ? [] : [animalsInWords(count, kind)];
  });
  if (parts.length === 0) return '';
  if (isHidden(lot)) return `at least ${listed(parts)}`;
  return `${lot.counted === 'estimated' ? 'about ' : ''}${listed(parts)}`;
}

const kinds = ['egg', 'larva', 'nymph', 'prepupa', 'pupa'];
