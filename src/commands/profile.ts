import {Argument} from 'commander';
import {textIn} from '../exchange/text-file.ts';
import {textTable} from '../exchange/text-table.ts';
import {Refusal} from '../records/refusal.ts';
import {type Profile, parseRecord} from '../records/schema/index.ts';
import {openDeskIfAny} from '../work/desk.ts';
import {sourceWords} from '../work/figures.ts';
import {constantDays, type ProfileRow, profileRows, tableDeviations} from '../work/profile-tables.ts';
import {profileOf} from '../work/profiles.ts';
import {type Command, examples, type Invocation} from './command.ts';

export const command: Command = {
  declare(command) {
    command
      .addArgument(
        new Argument('<what>', 'list, show CODE, or check FILE').choices(['list', 'show', 'check']),
      )
      .argument('[which]', 'the profile’s code, or the file to check');
    examples(command, 'profile list', 'profile show pieris-rapae', 'profile check my-moth.json');
  },
  async run(invocation, [what, which]) {
    if (what === 'list') return list(invocation);
    if (which === undefined)
      throw new Refusal(
        `which profile to ${what} is not said`,
        'profile',
        `Name it: teneral profile ${what} …`,
      );
    return what === 'show' ? show(invocation, which) : check(invocation, which);
  },
};

async function list(invocation: Invocation): Promise<void> {
  const rows = await profileRows((await openDeskIfAny(invocation))?.state);
  invocation.answer(rows, () =>
    textTable<ProfileRow>(rows, [
      {head: 'profile', cell: row => row.profile},
      {head: 'name', cell: row => row.name},
      {head: 'rank', cell: row => row.rank},
      {head: 'reared in', cell: row => row.rearing.join(', ')},
      {
        head: 'days at 20 °C',
        right: true,
        cell: row => (row.daysAt20 === null ? '–' : row.daysAt20.toFixed(1)),
      },
      {head: '', cell: row => (row.fromMemory ? 'some figures from memory' : '')},
    ]),
  );
}

async function show(invocation: Invocation, code: string): Promise<void> {
  const profile = await profileOf(code, (await openDeskIfAny(invocation))?.state);
  if (profile === undefined)
    throw new Refusal(
      `there is no profile "${code}"`,
      'profile show',
      'teneral profile list shows those there are.',
    );
  invocation.answer(profile, () => textOf(profile));
}

async function check(invocation: Invocation, file: string): Promise<void> {
  const profile = parseProfile(readJson(file), file);
  const deviations = tableDeviations(profile);
  invocation.answer({profile: profile.profile, sound: true, deviations}, () => {
    const head = `${file} holds a sound profile: ${profile.name}`;
    return deviations.length === 0 ? head : `${head}\n\n${textTable(deviations, DEVIATIONS)}`;
  });
}

const DEVIATIONS = [
  {head: 'stage', cell: (row: {stage: string}) => row.stage},
  {head: '°C', right: true, cell: (row: {temperature: number}) => String(row.temperature)},
  {head: 'published days', right: true, cell: (row: {days: number}) => row.days.toFixed(2)},
  {
    head: 'recomputed',
    right: true,
    cell: (row: {recomputed: number | null}) => row.recomputed?.toFixed(2) ?? '–',
  },
];

function textOf(profile: Profile): string {
  const temperatures = [10, 15, 20, 25, 30];
  const head = `${profile.profile}: ${profile.name} (${profile.rank})`;
  const days = textTable(constantDays(profile, temperatures), [
    {head: 'stage', cell: row => row.stage},
    ...temperatures.map((temperature, i) => ({
      head: `${temperature} °C`,
      right: true,
      cell: (row: {days: readonly (number | null)[]}) => row.days[i]?.toFixed(1) ?? '–',
    })),
  ]);
  const parts = [head, profile.note ?? '', `Mean days at constant temperatures\n${days}`];
  if (profile.cautions.length > 0)
    parts.push(`Take care\n${profile.cautions.map(line => `  ${line}`).join('\n')}`);
  parts.push(`Sources\n${profile.sources.map(source => `  ${sourceWords(source)}`).join('\n')}`);
  return parts.filter(part => part !== '').join('\n\n');
}

function readJson(file: string): unknown {
  const text = textIn(file);
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Refusal(`the file is not JSON (${why})`, file, 'A profile file holds one profile in braces.');
  }
}

function parseProfile(value: unknown, file: string): Profile {
  const record = parseRecord(
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? {record: 'profile', ...value}
      : value,
    file,
  );
  if ('stages' in record && 'sources' in record) return record;
  throw new Refusal(
    `the file holds a record "${record.record}"`,
    file,
    'A profile file holds one profile record.',
  );
}
