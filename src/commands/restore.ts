import {type Restored, restoreRoom} from '../room/restore.ts';
import {type Command, examples, textOption} from './command.ts';

export const command: Command = {
  declare(command) {
    command.option('--from <backup>', 'a copy in the room’s backups folder (default: the newest sound one)');
    examples(command, 'restore');
  },
  async run(invocation, _, options) {
    const restored = await restoreRoom(invocation.dir, {
      by: invocation.by,
      from: textOption(options, 'from'),
    });
    invocation.answer(restored, () => told(restored));
  },
};

function told({from, at, aside, lost}: Restored): string {
  const copy = at === undefined ? '' : `, made ${new Date(at).toISOString()}`;
  const lines = [
    from === undefined
      ? 'room.json is sound; nothing of it was replaced'
      : `the room stands on ${from}${copy}`,
  ];
  if (aside !== undefined) lines.push(`what was damaged or replaced is kept in ${aside}`);
  if (lost.length > 0) lines.push('could not be brought back:', ...lost.map(line => `  ${line}`));
  return lines.join('\n');
}
