import {InvalidArgumentError} from 'commander';
import {type WaterAnswer, waterOf} from '../work/water-chemistry.ts';
import {pressureIn, pressureOptions} from './air.ts';
import {type Command, examples, type Invocation, numberOption, type Options} from './command.ts';
import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

const measured = recordCommand({
  arguments: [['[unit]', 'the aquarium; without it nothing is recorded and the question is answered']],
  options: command =>
    command
      .option('--temperature <C>', 'of the water', numberWord)
      .option('--oxygen <mg/L>', 'dissolved oxygen', numberWord)
      .option('--ph <n>', 'pH', numberWord)
      .option('--ammonia <mg/L>', 'total ammonia', numberWord)
      .option('--nitrite <mg/L>', 'nitrite', numberWord)
      .option('--conductivity <µS/cm>', 'conductivity', numberWord)
      .option('--hardness <mg/L>', 'hardness as calcium carbonate', numberWord)
      .option('--level <L>', 'water in it', numberWord),
  examples: ['water T1 --temperature 18 --oxygen 9 --ph 7.8'],
  record: ([unit], {temperature, oxygen, ph, ammonia, nitrite, conductivity, hardness, level}) => ({
    record: 'water',
    unit,
    temperature,
    oxygenMgL: oxygen,
    ph,
    ammoniaMgL: ammonia,
    nitriteMgL: nitrite,
    conductivityUScm: conductivity,
    hardnessMgL: hardness,
    levelLitres: level,
  }),
});

export const command: Command = {
  declare(command) {
    measured.declare(command);
    pressureOptions(command);
    command.option('--salinity <g/kg>', 'of the water (default: 0)', numberWord);
    examples(command, 'water --temperature 18 --altitude 600 --ph 7.8 --ammonia 0.5');
  },
  async run(invocation, args, options) {
    return args[0] === undefined ? answered(invocation, options) : measured.run(invocation, args, options);
  },
};

function answered(invocation: Invocation, options: Options): void {
  const temperatureC = numberOption(options, 'temperature');
  if (temperatureC === undefined)
    throw new InvalidArgumentError('name a unit to record a measurement, or give --temperature to ask.');
  const answer = waterOf({
    temperatureC,
    pressureKPa: pressureIn(options),
    salinity: numberOption(options, 'salinity') ?? 0,
    ph: numberOption(options, 'ph'),
    ammoniaMgL: numberOption(options, 'ammonia'),
    oxygenMgL: numberOption(options, 'oxygen'),
  });
  invocation.answer(answer, () => waterText(answer));
}

function waterText(answer: WaterAnswer): string {
  const {oxygenSaturationMgL, oxygenPercent, unionisedShare, unionisedMgL, caution} = answer;
  const lines = [`oxygen at saturation  ${oxygenSaturationMgL.toFixed(2)} mg/L`];
  if (oxygenPercent !== null) lines.push(`measured              ${oxygenPercent.toFixed(0)} % of it`);
  if (unionisedShare !== null)
    lines.push(`un-ionised ammonia    ${(unionisedShare * 100).toFixed(2)} % of the total`);
  if (unionisedMgL !== null) lines.push(`                      ${unionisedMgL.toFixed(4)} mg/L`);
  if (caution !== null) lines.push(`care                  ${caution}`);
  return lines.join('\n');
}
