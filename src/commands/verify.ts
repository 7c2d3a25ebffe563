import {verifyRoom} from '../room/verify.ts';
import type {Command} from './command.ts';

export const command: Command = {
  declare() {},
  async run(invocation) {
    const verified = await verifyRoom(invocation.dir);
    const {sound, documents, problems} = verified;
    invocation.answer(verified, () =>
      sound
        ? `sound: ${documents} documents`
        : problems.map(({what, where, mend}) => `${where}: ${what}. ${mend}`).join('\n'),
    );
    return sound;
  },
};
