import {type Archived, archiveRoom} from '../room/archive.ts';
import {openDesk} from '../work/desk.ts';
import type {Command} from './command.ts';

export const command: Command = {
  declare() {},
  async run(invocation) {
    const {now} = await openDesk(invocation);
    const archived = await archiveRoom(invocation.dir, {by: invocation.by, now});
    invocation.answer(archived, () => told(archived));
  },
};

function told({lots, entries}: Archived): string {
  if (entries === 0)
    return 'nothing is ready to be put aside: every lot that is closed and no longer needed here is put aside already';
  const withThem =
    lots.length === 0
      ? ''
      : `, among them ${lots.length === 1 ? 'all of lot' : 'all of the lots'} ${lots.join(', ')}`;
  return `put aside ${entries} ${entries === 1 ? 'entry' : 'entries'}${withThem}; their codes still find them`;
}
