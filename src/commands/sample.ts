import {type Options, textOption} from './command.ts';
import {recordCommand} from './recording.ts';
import {collect, numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<code>', 'the field sample’s code'],
    ['<method>', 'how it was collected: pitfall, light, sweep, beating, dip-net, gall, search …'],
  ],
  options: command =>
    command
      .requiredOption('--collected <day>', 'the day, or two as FROM/TO for anything exposed')
      .option('--collector <name>', 'who collected; may be given several times', collect)
      .option('--country <text>')
      .option('--region <text>')
      .option('--locality <text>')
      .option('--latitude <degrees>', 'decimal degrees, south negative', numberWord)
      .option('--longitude <degrees>', 'decimal degrees, west negative', numberWord)
      .option('--uncertainty <m>', 'how far off the coordinates may be', numberWord)
      .option('--elevation <m>', 'above the sea', numberWord)
      .option('--host <text>', 'host plant or animal')
      .option('--substrate <text>', 'what it sat in or on')
      .option('--habitat <text>')
      .option('--medium <text>', 'what the catch fell into: none, water, water-detergent, ethanol …')
      .option('--permit <text>')
      .option('--note <text>'),
  examples: [
    'sample 26-031 beating --collected 2026-05-30 --collector "A. Collector" --locality "Heron wood" --host "Salix caprea"',
  ],
  record: ([code, method], options) => {
    const {collector, country, region, locality, latitude, longitude, uncertainty, elevation} = options;
    const place = {
      country,
      region,
      locality,
      latitude,
      longitude,
      uncertaintyM: uncertainty,
      elevationM: elevation,
    };
    const {host, substrate, habitat, medium, permit, note} = options;
    return {
      record: 'sample',
      code,
      method,
      collected: collected(options),
      collectors: collector,
      place: Object.values(place).every(value => value === undefined) ? undefined : place,
      host,
      substrate,
      habitat,
      medium,
      permit,
      note,
    };
  },
});

function collected(options: Options): {from: string | undefined; to?: string} {
  const [from, to] = textOption(options, 'collected')?.split('/') ?? [];
  return to === undefined ? {from} : {from, to};
}
