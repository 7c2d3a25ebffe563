import {InvalidArgumentError} from 'commander';
import {jsonIn} from '../exchange/json-text.ts';
import {textTable} from '../exchange/text-table.ts';
import {parseRateModel} from '../records/schema/rate-model.ts';
import {type RateModelSpec, rateModel} from '../thermal/rate-model.ts';
import {landmarkWords} from '../work/landmark-words.ts';
import {type Command, examples} from './command.ts';
import {numberWord} from './words.ts';

const EXAMPLE = '{"kind":"briere-1","a":7.86e-5,"lower":11.36,"upper":39.17}';

interface RateAt {
  readonly temperature: number;
  readonly ratePerDay: number;
  /** Null where nothing develops. */
  readonly days: number | null;
}

export const command: Command = {
  declare(command) {
    command
      .requiredOption('--model <json>', 'the rate model, as a profile holds it')
      .requiredOption('--at <°C>', 'one temperature, or several joined by commas');
    examples(
      command,
      `rate --model '${EXAMPLE}' --at 22.5`,
      `rate --model '{"kind":"degree-day","lower":7,"upper":30,"degreeDays":80}' --at 10,15,20,25,30,35`,
    );
  },
  async run(invocation, _, options) {
    const spec = parseRateModel(
      jsonIn(String(options.model), '--model', `Write it in quotes, like '${EXAMPLE}'.`),
      '--model',
    );
    const rates = temperaturesIn(String(options.at)).map(at => rateAt(spec, at));
    const answers = rates.map(({ratePerDay, days}) => ({ratePerDay, days}));
    invocation.answer(answers.length === 1 ? answers[0] : answers, () => textOf(spec, rates));
  },
};

function temperaturesIn(words: string): number[] {
  const temperatures = words.split(',').map(word => numberWord(word));
  if (temperatures.length === 0) throw new InvalidArgumentError('--at takes at least one temperature.');
  return temperatures;
}

function rateAt(spec: RateModelSpec, temperature: number): RateAt {
  const ratePerDay = rateModel(spec).ratePerDay(temperature);
  return {temperature, ratePerDay, days: ratePerDay > 0 ? 1 / ratePerDay : null};
}

function textOf(spec: RateModelSpec, rates: readonly RateAt[]): string {
  const rows = textTable(rates, [
    {head: '°C', right: true, cell: ({temperature}) => String(temperature)},
    {head: 'rate per day', right: true, cell: ({ratePerDay}) => ratePerDay.toFixed(5)},
    {head: 'days', right: true, cell: ({days}) => (days === null ? 'no development' : days.toFixed(2))},
  ]);
  return `${spec.kind}: ${landmarkWords(spec)}\n\n${rows}`;
}
