import type {Clues} from '../development/choosing.ts';
import {textTable} from '../exchange/text-table.ts';
import {Refusal} from '../records/refusal.ts';
import {type Choice, choicesFor, clueOf, cluesOf, clueWords, revisionOf} from '../work/choice.ts';
import {lineOf} from '../work/daybook.ts';
import {type Desk, openDesk, openDeskIfAny} from '../work/desk.ts';
import {record} from '../work/record.ts';
import {type Command, examples, type Invocation, listOption, type Options} from './command.ts';
import {candidateWords, collect} from './words.ts';

/** Options that are clues, with what they say. */
const CLUES: readonly (readonly [name: string, value: string, says: string])[] = [
  ['taxon', 'name', 'order, family or name as far as known'],
  ['host', 'name', 'the plant, animal or material it lives on'],
  ['sat', 'where', 'where it sat: leaf, mine, gall, bark, wood, soil, still-water …'],
  ['length', 'mm', 'length of the body now'],
  ['stage', 'stage', 'its stage, such as larva-4'],
  ['month', '1-12', 'when it was found'],
  ['method', 'method', 'how it was collected'],
  ['unit-type', 'type', 'cage, aquarium or emergence-box'],
];

export const command: Command = {
  declare(command) {
    command.argument('[lot]', 'a lot: what is recorded of it counts as known');
    for (const [name, value, says] of CLUES) command.option(`--${name} <${value}>`, says);
    command
      .option('--take', 'give the lot these candidates')
      .option('--set <profile=weight>', 'give the lot this candidate; may be given several times', collect);
    examples(
      command,
      'candidates --taxon Lepidoptera --host "Brassica oleracea" --length 18',
      'candidates 26-031-A --sat leaf --take',
      'candidates 26-031-A --set pieris-rapae=0.7 --set lepidoptera=0.3',
    );
  },
  async run(invocation, [code], options) {
    const desk = code === undefined ? await openDeskIfAny(invocation) : await openDesk(invocation);
    const lot = code === undefined ? undefined : lotOf(desk!, code);
    const set = listOption(options, 'set');
    if (lot === undefined && (options.take === true || set.length > 0))
      throw new Refusal('no lot is named', 'candidates', 'Name the lot that gets the candidates.');
    if (lot !== undefined && set.length > 0) return take(invocation, lot.code, candidateWords(set), '');
    const clues = {...(lot === undefined ? {} : cluesOf(lot, desk!)), ...cluesGiven(options)};
    const choices = await choicesFor(clues, desk?.state);
    if (lot !== undefined && options.take === true) {
      if (choices.length === 0) throw nothingFits(clues);
      return take(invocation, lot.code, choices, clueWords(clues));
    }
    invocation.answer({lot: code ?? null, clues, suggestions: choices}, () => textOf(choices, clues));
  },
};

function lotOf({state}: Desk, code: string) {
  const lot = state.lots.get(code);
  if (lot === undefined)
    throw new Refusal(
      `there is no lot "${code}"`,
      'candidates',
      'teneral list lots shows the lots there are.',
    );
  return lot;
}

function cluesGiven(options: Options): Clues {
  const keys = CLUES.map(([name]) => [name, options[name === 'unit-type' ? 'unitType' : name]] as const);
  return Object.assign(
    {},
    ...keys.map(([name, value]) => (typeof value === 'string' ? clueOf(name, value) : {})),
  );
}

async function take(
  invocation: Invocation,
  lot: string,
  candidates: readonly {readonly profile: string; readonly weight: number}[],
  why: string,
): Promise<void> {
  const {applied, written, desk} = await record(invocation, [revisionOf(lot, candidates, why)]);
  invocation.answer({...applied, lot, candidates}, () =>
    written.map(entry => lineOf(entry, desk)).join('\n'),
  );
}

function textOf(choices: readonly Choice[], clues: Clues): string {
  if (choices.length === 0) return `${nothingFits(clues).what}. ${nothingFits(clues).mend}`;
  const table = textTable(choices, [
    {head: 'candidate', cell: row => row.profile},
    {head: 'weight', right: true, cell: row => `${row.weight.toFixed(2)}${row.fromMemory ? '*' : ' '}`},
    {head: '', cell: row => (row.dated ? '' : 'no date')},
    {head: 'why', cell: row => row.why.join('; ')},
  ]);
  const known = clueWords(clues);
  return [
    ...(known === '' ? [] : [`known: ${known}`, '']),
    table,
    ...(choices.some(each => each.fromMemory) ? ['* some of its figures are from memory'] : []),
  ].join('\n');
}

function nothingFits(clues: Clues): Refusal {
  return Object.values(clues).every(clue => clue === undefined)
    ? new Refusal('nothing is known', 'candidates', 'Say one thing: --taxon, --host, --sat, --length …')
    : new Refusal('no profile fits all of this', 'candidates', 'Leave out what is least sure.');
}
