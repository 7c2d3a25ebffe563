import {existsSync} from 'node:fs';
import {Argument} from 'commander';
import {jsonIn} from '../exchange/json-text.ts';
import {glyphsFor} from '../exchange/pictures/glyphs.ts';
import {textIn} from '../exchange/text-file.ts';
import {Refusal} from '../records/refusal.ts';
import {type Profile, parseRecord} from '../records/schema/index.ts';
import {openDeskIfAny} from '../work/desk.ts';
import {checkedProfile, checkedProfiles} from '../work/profile-check.ts';
import {profileCurve} from '../work/profile-curve.ts';
import {profileRows} from '../work/profile-tables.ts';
import {profileOf} from '../work/profiles.ts';
import {type Command, examples, type Invocation, textOption} from './command.ts';
import {checkText, listText, showText} from './profile-text.ts';

export const command: Command = {
  declare(command) {
    command
      .addArgument(
        new Argument('<what>', 'list, show CODE, or check [CODE|FILE]').choices(['list', 'show', 'check']),
      )
      .argument('[which]', 'the profile’s code, or the file to check')
      .option('--stage <stage>', 'with show: the stage whose curve is drawn');
    examples(
      command,
      'profile list',
      'profile show pieris-rapae --stage pupa',
      'profile check',
      'profile check my-moth.json',
    );
  },
  async run(invocation, [what, which], options) {
    if (what === 'list') return list(invocation);
    if (what === 'check') return check(invocation, which);
    if (which === undefined)
      throw new Refusal(
        'which profile to show is not said',
        'profile',
        'Name it: teneral profile show pieris-rapae.',
      );
    return show(invocation, which, textOption(options, 'stage'));
  },
};

async function list(invocation: Invocation): Promise<void> {
  const rows = await profileRows((await openDeskIfAny(invocation))?.state);
  invocation.answer(rows, () => listText(rows));
}

async function show(invocation: Invocation, code: string, stage: string | undefined): Promise<void> {
  const profile = await profileOf(code, (await openDeskIfAny(invocation))?.state);
  if (profile === undefined) throw noProfile(code, 'profile show');
  if (!('undated' in profile)) profileCurve(profile, stage);
  invocation.answer(profile, () => showText(profile, stage, invocation.columns, glyphsFor(process.env)));
}

/** All profiles at hand, one of them by its code, or one in a file. */
async function check(invocation: Invocation, which: string | undefined): Promise<boolean> {
  const file = which !== undefined && (/[./\\]/.test(which) || existsSync(which));
  const checks = file
    ? [
        checkedProfile(
          parseProfile(jsonIn(textIn(which), which, 'A profile file holds one profile in braces.'), which),
        ),
      ]
    : await checkedProfiles(which === undefined ? [] : [which], (await openDeskIfAny(invocation))?.state);
  if (which !== undefined && checks.length === 0) throw noProfile(which, 'profile check');
  invocation.answer(which === undefined ? checks : checks[0], () => checkText(checks));
  return checks.every(({sound}) => sound);
}

function noProfile(code: string, where: string): Refusal {
  return new Refusal(`there is no profile "${code}"`, where, 'teneral profile list shows those there are.');
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
