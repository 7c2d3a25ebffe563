import {civil} from '../exchange/civil.ts';
import {openRoom} from '../room/open.ts';
import {type Restored, restoreRoom} from '../room/restore.ts';
import {type Command, examples, textOption} from './command.ts';

export const command: Command = {
  declare(command) {
    command.option('--from <backup>', 'a copy in the room’s backups folder (default: the newest sound one)');
    examples(command, 'restore');
  },
  async run(invocation, _, options) {
    const {dir, by} = invocation;
    const {at, ...restored} = await restoreRoom(dir, {by, from: textOption(options, 'from')});
    const {zone} = await openRoom(dir);
    const made = at === undefined ? null : civil(zone).iso(at);
    invocation.answer({...restored, at: made}, () => told(restored, made));
  },
};

function told({from, aside, lost}: Omit<Restored, 'at'>, made: string | null): string {
  const copy = made === null ? '' : `, made ${made}`;
  const lines = [
    from === undefined
      ? 'room.json is sound; nothing of it was replaced'
      : `the room stands on ${from}${copy}`,
  ];
  if (aside !== undefined) lines.push(`what was damaged or replaced is kept in ${aside}`);
  if (lost.length > 0) lines.push('could not be brought back:', ...lost.map(line => `  ${line}`));
  return lines.join('\n');
}
