import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<lot>', 'the lot'],
    ['[stage]', 'the stage of the animal preserved'],
  ],
  options: command =>
    command
      .option('--count <n>', 'how many', numberWord, 1)
      .option('--code <specimen>', 'its specimen code (default: LOT-v1 …)'),
  examples: ['voucher 26-031-A larva-5'],
  record: ([lot, stage], {count, code}) => ({record: 'voucher', lot, stage, count, specimen: code}),
});
