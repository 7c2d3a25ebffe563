import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<logger>', 'the logger or thermometer'],
    ['<C>', 'temperature, °C'],
    ['[rh]', 'relative humidity, per cent'],
  ],
  examples: ['log L1 21.4 62', 'log L1 21.4 --at 2026-06-12T08:40'],
  record: ([logger, temperature, humidity]) => ({
    record: 'reading',
    logger,
    temperature: numberWord(temperature ?? ''),
    humidity: humidity === undefined ? undefined : numberWord(humidity),
  }),
});
