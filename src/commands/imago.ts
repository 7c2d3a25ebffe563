import {numberOption} from './command.ts';
import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [['<specimen>', 'the subimago that has moulted to the imago']],
  options: command =>
    command
      .option('--skin <code>', 'the vial with its skin as a subimago')
      .option(
        '--association <n>',
        '1 same animal, 2 same container and day, 3 same lot, 4 assumed',
        numberWord,
      ),
  examples: ['imago 26-047-A-1', 'imago 26-047-A-1 --skin 26-047-A-1b --association 1'],
  record: ([specimen], options) => {
    const association = numberOption(options, 'association');
    return {
      record: 'imago',
      specimen,
      exuviae:
        options.skin === undefined
          ? undefined
          : {code: options.skin, ...(association === undefined ? {} : {association})},
    };
  },
});
