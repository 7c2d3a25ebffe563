import {openDesk} from '../work/desk.ts';
import {writeDoorSheet} from '../work/door-sheet.ts';
import {type Command, examples, textOption} from './command.ts';
import {numberWord} from './words.ts';

export const command: Command = {
  declare(command) {
    command
      .requiredOption('--out <file>', 'a .pdf or a .txt')
      .option('--days <n>', 'how many days, from today on', numberWord, 1)
      .option('--for <name>', 'only what this person takes');
    examples(command, 'sheet --out door.pdf', 'sheet --days 3 --for "A. Keeper" --out weekend.txt');
  },
  async run(invocation, _, options) {
    const desk = await openDesk(invocation);
    const file = String(options.out);
    const pages = await writeDoorSheet(desk, file, {
      days: Number(options.days),
      who: textOption(options, 'for'),
    });
    invocation.answer({file, pages}, () =>
      pages === null ? file : `${file}: ${pages} ${pages === 1 ? 'sheet' : 'sheets'} of paper`,
    );
  },
};
