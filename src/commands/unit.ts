import {type Options, textOption} from './command.ts';
import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<code>', 'the unit’s code'],
    [
      '[type]',
      'cage, aquarium or emergence-box; of a unit that is there already, only what changes is needed',
    ],
    ['[place]', 'where it stands, from large to small: "rack A/2"'],
  ],
  options: command =>
    command
      .option('--logger <code>', 'the logger that reads it')
      .option('--offset <C>', 'how much warmer the animals are than the logger', numberWord)
      .option('--litres <n>', 'its volume', numberWord)
      .option('--aerated', 'air is blown into its water all day')
      .option('--not-aerated', 'it is not')
      .option('--free-from <instant>', 'nothing is put in before: it still dries, or its water matures')
      .option('--hold <C>', 'it is set to this temperature', numberWord)
      .option('--day <C>', 'its temperature while the lights are on', numberWord)
      .option('--night <C>', 'its temperature while they are off', numberWord)
      .option('--ambient', 'it follows the room or the outdoors')
      .option('--lights <from-to>', 'lights on and off, such as 06:00-22:00'),
  examples: [
    'unit C3 cage "rack A/2" --logger L1 --hold 22',
    'unit C3 --hold 25',
    'unit E1 emergence-box "cold room" --ambient',
  ],
  record: ([code, type, place], options) => ({
    record: 'unit',
    code,
    type,
    place,
    logger: options.logger,
    offsetC: options.offset,
    volumeLitres: options.litres,
    aerated: options.aerated === true ? true : options.notAerated === true ? false : undefined,
    freeFrom: options.freeFrom,
    setPoints: setPoints(options),
    light: lights(options),
  }),
});

function lights(options: Options): {on: string | undefined; off: string | undefined} | undefined {
  const [on, off] = textOption(options, 'lights')?.split('-') ?? [];
  return on === undefined ? undefined : {on, off};
}

function setPoints(options: Options): unknown {
  const {hold, day, night, ambient} = options;
  if (hold !== undefined) return {constant: hold};
  if (day !== undefined || night !== undefined) {
    const {on = '06:00', off = '22:00'} = lights(options) ?? {};
    return {day: day ?? night, night: night ?? day, lightsOn: on, lightsOff: off};
  }
  return ambient === true ? {ambient: true} : undefined;
}
