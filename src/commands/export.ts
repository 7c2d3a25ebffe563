import {Argument} from 'commander';
import {writeCalendar} from '../work/calendar-file.ts';
import {openDesk} from '../work/desk.ts';
import {type Command, examples, type Invocation, type Options, textOption} from './command.ts';
import {numberWord} from './words.ts';

const kinds = {calendar} as const;
const isKind = (word: string | undefined): word is keyof typeof kinds =>
  word !== undefined && Object.hasOwn(kinds, word);

export const command: Command = {
  declare(command) {
    command
      .addArgument(new Argument('<what>', 'what to write').choices(Object.keys(kinds)))
      .requiredOption('--out <file>', 'where to')
      .option('--days <n>', 'calendar: how many days, from today on', numberWord, 28)
      .option('--for <name>', 'calendar: only what this person takes')
      .option('--each', 'calendar: an event for each task, in place of one for each shelf');
    examples(command, 'export calendar --out care.ics', 'export calendar --for "A. Keeper" --out mine.ics');
  },
  async run(invocation, [what], options) {
    await kinds[isKind(what) ? what : 'calendar'](invocation, String(options.out), options);
  },
};

/** The care ahead as iCalendar (RFC 5545); written over the file before, it says what has changed. */
async function calendar(invocation: Invocation, file: string, options: Options): Promise<void> {
  const desk = await openDesk(invocation);
  const {events, added, changed, cancelled} = await writeCalendar(desk, file, {
    days: Number(options.days),
    who: textOption(options, 'for'),
    each: options.each === true,
  });
  invocation.answer(
    {file, events: events.length, added, changed, cancelled},
    () => `${file}: ${events.length} events, ${added} new, ${changed} changed, ${cancelled} cancelled`,
  );
}
