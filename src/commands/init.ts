import {civil as civilOf} from '../exchange/civil.ts';
import {createRoom} from '../room/create.ts';
import {nowOf} from '../work/desk.ts';
import {type Command, examples} from './command.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('<dir>', 'the folder of the new room; it must be absent or empty')
      .requiredOption('--name <text>', 'what people call the room')
      .requiredOption('--zone <IANA>', 'the zone of its clock, such as Europe/Vienna');
    examples(command, 'init room --name "north room" --zone Europe/Vienna');
  },
  async run(invocation, [dir = ''], {name, zone}) {
    const civil = civilOf(String(zone));
    const now = nowOf(invocation, civil);
    await createRoom(dir, {name: String(name), zone: civil.zone, by: invocation.by, now});
    invocation.answer({room: dir, name, zone: civil.zone}, () => begin(dir, String(name)));
  },
};

/** An empty room teaches its first steps. */
function begin(dir: string, name: string): string {
  const room = dir === 'room' ? '' : ` --room ${dir}`;
  return `${name} stands ready in ${dir}. What usually comes next:

  teneral${room} logger L1 automatic
  teneral${room} unit C1 cage "rack A/1" --logger L1 --hold 22
  teneral${room} sample 26-001 beating --collected 2026-05-30 --locality "…" --host "…"
  teneral${room} lot 26-001-A C1 larva-4=12 --sample 26-001 --candidate lepidoptera
  teneral${room} import L1 logger.csv
  teneral${room} forecast
  teneral${room} today

Another folder than ./room is named once with --room DIR, or for good with TENERAL_ROOM.`;
}
