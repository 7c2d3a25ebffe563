import {makeDemo} from '../work/demo.ts';
import {openDesk} from '../work/desk.ts';
import {forecastSaid} from '../work/forecast-said.ts';
import {outlooks} from '../work/outlook.ts';
import {today} from '../work/today.ts';
import {type Command, examples} from './command.ts';
import {saidText} from './said-text.ts';
import {openScreens} from './screens.ts';
import {todayText} from './today-text.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('[dir]', 'the folder of the example room, absent or empty (default: a new temporary one)')
      .option('--no-open', 'make it and stop');
    examples(command, 'demo', 'demo my-example');
  },
  async run(invocation, [dir], {open}) {
    const room = await makeDemo(invocation, dir);
    const there = {...invocation, dir: room};
    if (invocation.json || open === false) {
      invocation.answer({room}, () => `the example room stands in ${room}`);
      return;
    }
    if (process.stdin.isTTY && process.stdout.isTTY) {
      await openScreens(there);
      process.stdout.write(`The example room stays in ${room}; open it again with: teneral --room ${room}\n`);
      return;
    }
    const desk = await openDesk(there);
    const forecasts = (await outlooks(desk)).map(outlook =>
      saidText(forecastSaid(outlook, desk), invocation.columns),
    );
    process.stdout.write(
      `${[`The example room stands in ${room}`, todayText(await today(desk), desk, invocation.columns), ...forecasts].join('\n\n')}\n`,
    );
  },
};
