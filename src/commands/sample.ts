import {readCoordinates} from '../exchange/coordinates.ts';
import {type Method, methods} from '../records/methods.ts';
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
      .option('--coordinates <text>', '"46.2497, 8.0172" or "46° 14′ 59″ N, 8° 1′ 2″ E"')
      .option('--latitude <degrees>', 'decimal degrees, south negative', numberWord)
      .option('--longitude <degrees>', 'decimal degrees, west negative', numberWord)
      .option('--uncertainty <m>', 'how far off the coordinates may be', numberWord)
      .option('--datum <text>', 'geodetic datum, such as WGS84')
      .option('--elevation <m>', 'above the sea', numberWord)
      .option('--host <text>', 'host plant or animal')
      .option('--host-part <text>', 'which part of it: leaf, stem, root, nest …')
      .option('--substrate <text>', 'what it sat in or on')
      .option('--habitat <text>')
      .option('--weather <text>')
      .option('--water <celsius>', 'temperature of the water', numberWord)
      .option('--amount <n unit>', 'how much was brought in: "40 galls", "1.2 kg"')
      .option('--dead-on-arrival <n>', 'found dead when it arrived', numberWord)
      .option('--medium <text>', 'what the catch fell into: none, water, water-detergent, ethanol …')
      .option('--last-emptied <day>', 'of a trap: when it was emptied before')
      .option('--traps <n>', 'how many traps make up the sample', numberWord)
      .option('--bait <text>', 'bait or lure')
      .option('--bait-since <day>', 'when it was put out')
      .option('--lamp <text>', 'lamp of a light trap')
      .option('--mesh <mm>', 'mesh width', numberWord)
      .option('--across <cm>', 'width of the pan, cup, funnel or net', numberWord)
      .option('--width <cm>', 'width of a band', numberWord)
      .option('--turns <n>', 'how often the band goes round', numberWord)
      .option('--height <m>', 'above the ground', numberWord)
      .option('--usual', 'what is not said is as usual for the method; teneral list methods shows it')
      .option('--permit <text>')
      .option('--note <text>'),
  examples: [
    'sample 26-031 beating --collected 2026-05-30 --collector "A. Collector" --locality "Heron wood" --host "Salix caprea"',
    'sample 26-032 yellow-pan --usual --collected 2026-05-30T09:00/2026-06-01T09:00 --coordinates "46° 14′ 59″ N, 8° 1′ 2″ E"',
    'sample 26-033 pitfall --collected 2026-05-01/2026-05-30 --last-emptied 2026-05-29 --traps 6',
  ],
  record: ([code, method], options) => {
    const {collector, host, hostPart, substrate, habitat, weather, water, permit, note} = options;
    const {medium: usualMedium, ...usualTrap} = options.usual === true ? usualOf(method) : {};
    return {
      record: 'sample',
      code,
      method,
      collected: collected(options),
      collectors: collector,
      trap: unlessEmpty({...usualTrap, ...trap(options)}),
      place: unlessEmpty(place(options)),
      host,
      hostPart,
      substrate,
      habitat,
      weather,
      waterC: water,
      amount: amount(options),
      deadOnArrival: options.deadOnArrival,
      medium: options.medium ?? usualMedium,
      permit,
      note,
    };
  },
});

function collected(options: Options): {from: string | undefined; to?: string} {
  const [from, to] = textOption(options, 'collected')?.split('/') ?? [];
  return to === undefined ? {from} : {from, to};
}

function usualOf(method: string | undefined) {
  return method !== undefined && Object.hasOwn(methods, method) ? methods[method as Method].usual : {};
}

function trap({lastEmptied, traps, bait, baitSince, lamp, mesh, across, width, turns, height}: Options) {
  return said({
    ...{lastEmptied, traps, bait, baitSince, lamp, turns},
    meshMm: mesh,
    acrossCm: across,
    widthCm: width,
    heightM: height,
  });
}

function place(options: Options) {
  const {country, region, locality, latitude, longitude, uncertainty, datum, elevation} = options;
  const written = textOption(options, 'coordinates');
  const read = written === undefined ? {latitude, longitude} : readCoordinates(written);
  return said({
    ...{country, region, locality, ...read, datum},
    uncertaintyM: uncertainty,
    verbatimCoordinates: written,
    elevationM: elevation,
  });
}

function amount(options: Options): unknown {
  const [, number, unit] = /^([\d.,]+)\s*(\S.*)$/u.exec(textOption(options, 'amount') ?? '') ?? [];
  return number === undefined ? options.amount : {amount: numberWord(number.replace(',', '.')), unit};
}

function said(fields: Options): Options {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}

function unlessEmpty(fields: Options): Options | undefined {
  return Object.keys(fields).length === 0 ? undefined : fields;
}
