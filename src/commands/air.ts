import {InvalidArgumentError, Option} from 'commander';
import {SEA_LEVEL_KPA, standardPressureKPa} from '../climate/pressure.ts';
import {type Psychrometer, psychrometers} from '../climate/psychrometer.ts';
import {textTable} from '../exchange/text-table.ts';
import {
  type AirAnswer,
  airOverSalt,
  airOverSalts,
  airWithHumidity,
  airWithWetBulb,
  inRange,
  type SaltAnswer,
} from '../work/air.ts';
import {type Command, examples, numberOption, type Options, textOption} from './command.ts';
import {numberWord} from './words.ts';

export const command: Command = {
  declare(command) {
    command
      .requiredOption('--temperature <C>', 'of the air, °C', numberWord)
      .option('--humidity <percent>', 'relative humidity', numberWord)
      .option('--wet-bulb <C>', 'what a wet thermometer shows, in place of --humidity', numberWord)
      .addOption(
        new Option('--psychrometer <how>', 'how air passes the wet bulb')
          .choices(psychrometers)
          .default('ventilated'),
      )
      .option('--salt <formula>', 'the humidity over its saturated solution, such as NaCl')
      .option('--salts', 'over every salt that is known')
      .option('--reads <percent>', 'with --salt: what a humidity sensor shows above it', numberWord);
    pressureOptions(command);
    examples(
      command,
      'air --temperature 22 --humidity 55',
      'air --temperature 22 --wet-bulb 17',
      'air --temperature 25 --salt NaCl --reads 78',
      'air --temperature 22 --salts',
    );
  },
  async run(invocation, _args, options) {
    const temperature = numberOption(options, 'temperature') ?? Number.NaN;
    const [humidity, wetBulb] = [numberOption(options, 'humidity'), numberOption(options, 'wetBulb')];
    const salt = textOption(options, 'salt');
    const asked = [humidity, wetBulb, salt, options.salts].filter(given => given !== undefined);
    if (asked.length !== 1)
      throw new InvalidArgumentError('give one of --humidity, --wet-bulb, --salt and --salts.');
    const aired = {
      pressureKPa: pressureIn(options),
      psychrometer: options.psychrometer as Psychrometer,
    };
    if (salt !== undefined) {
      const answer = airOverSalt(salt, temperature, numberOption(options, 'reads'));
      invocation.answer(answer, () => saltText(answer, temperature));
    } else if (options.salts === true) {
      const answer = airOverSalts(temperature);
      invocation.answer(answer, () => saltsText(answer));
    } else {
      const answer =
        humidity === undefined
          ? airWithWetBulb(temperature, wetBulb ?? Number.NaN, aired)
          : airWithHumidity(temperature, humidity, aired);
      invocation.answer(answer, () => airText(answer));
    }
  },
};

/** `--pressure` and `--altitude`, which stands for the pressure that is usual there. */
export function pressureOptions(command: Parameters<Command['declare']>[0]): void {
  command
    .option('--pressure <kPa>', `of the air (default: ${SEA_LEVEL_KPA})`, numberWord)
    .option('--altitude <m>', 'in place of --pressure: metres above the sea', numberWord);
}

export function pressureIn(options: Options): number {
  const pressure = numberOption(options, 'pressure');
  const altitude = numberOption(options, 'altitude');
  if (pressure !== undefined && altitude !== undefined)
    throw new InvalidArgumentError('give --pressure or --altitude, not both.');
  if (altitude !== undefined) inRange(altitude, -500, 6000, 'm', '--altitude');
  if (pressure !== undefined) inRange(pressure, 40, 120, 'kPa', '--pressure');
  return pressure ?? standardPressureKPa(altitude ?? 0);
}

function airText(answer: AirAnswer): string {
  const {saturationKPa, vapourKPa, deficitKPa, dewPoint, absoluteGM3, wetBulb, humidity} = answer;
  return [
    ...(humidity === undefined ? [] : [`humidity      ${humidity.toFixed(1)} %`]),
    `vapour        ${vapourKPa.toFixed(3)} of ${saturationKPa.toFixed(3)} kPa, ${deficitKPa.toFixed(3)} short of saturation`,
    `dew point     ${dewPoint === null ? 'none, the air is dry' : `${dewPoint.toFixed(1)} °C`}`,
    `wet bulb      ${wetBulb.toFixed(1)} °C`,
    `water in air  ${absoluteGM3.toFixed(2)} g/m³`,
  ].join('\n');
}

function saltText({salt, name, humidity, uncertainty, source, sensor}: SaltAnswer, temperature: number) {
  const keeps = `${salt} (${name}) at ${temperature} °C keeps ${humidity.toFixed(1)} ± ${uncertainty.toFixed(1)} %`;
  const lines = [keeps, `  ${source}`];
  if (sensor !== undefined) {
    const {error, withinUncertainty} = sensor;
    const side = error > 0 ? 'too much' : 'too little';
    lines.push(
      withinUncertainty
        ? `  the sensor agrees within the uncertainty of the salt (${signed(error)} %)`
        : `  the sensor shows ${Math.abs(error).toFixed(1)} % ${side}; check it over a second salt before correcting it`,
    );
  }
  return [...lines, ...practice].join('\n');
}

function saltsText(answers: readonly SaltAnswer[]): string {
  const table = textTable(answers, [
    {head: 'salt', cell: row => row.salt},
    {head: '', cell: row => row.name},
    {head: 'humidity %', right: true, cell: row => row.humidity.toFixed(1)},
    {head: '±', right: true, cell: row => row.uncertainty.toFixed(1)},
    {head: 'source', cell: row => row.source},
  ]);
  return [table, '', ...practice].join('\n');
}

/** OIML R 121:1996 on making the solutions; the cautions are common practice, no source. */
const practice = [
  '  a slush with 30 to 90 % of the salt undissolved, distilled water, a wide dish in a small closed box,',
  '  the temperature steady to 1 °C, a day of waiting',
  '  care: animals and hands must not reach the slush; lithium and barium salts are poisonous, nitrates feed fire',
];

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${value.toFixed(1)}`;
}
