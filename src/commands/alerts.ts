import {instantWords} from '../exchange/time-words.ts';
import {instantOf} from '../records/entry.ts';
import {type Alerts, alerts} from '../work/alerts.ts';
import {type Desk, openDesk} from '../work/desk.ts';
import {type Command, examples} from './command.ts';

export const command: Command = {
  declare(command) {
    examples(command, 'alerts', 'acknowledge temperature:C3:2026-06-12 lamp turned down');
  },
  async run(invocation) {
    const desk = await openDesk(invocation);
    const answer = await alerts(desk);
    invocation.answer(answer, () => textOf(answer, desk));
  },
};

function textOf({alerts, passed}: Alerts, {civil, now}: Desk): string {
  const when = (iso: string) => instantWords(instantOf(iso), civil, now);
  const lines = alerts.flatMap(({id, what, mend, since, acknowledged}) => [
    `${what}; since ${when(since)}`,
    acknowledged === null ? `  ${mend}` : `  seen to ${when(acknowledged.at)}: ${acknowledged.done}`,
    `  ${id}`,
  ]);
  const gone = passed.map(({id, acknowledged: {at, done}}) => `  ${id}: seen to ${when(at)}, ${done}`);
  return [
    ...(lines.length === 0 ? ['nothing is amiss'] : lines),
    ...(gone.length === 0 ? [] : ['', 'passed in the last 30 days:', ...gone]),
  ].join('\n');
}
