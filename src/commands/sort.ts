import {recordCommand} from './recording.ts';

export const command = recordCommand({
  arguments: [
    ['<sample>', 'the field sample, or a part of one'],
    ['<state>', 'unsorted, partly or sorted'],
    ['[words...]', 'how far: spiders and beetles out, rest in the fridge'],
  ],
  examples: ['sort 26-015 partly spiders and beetles are out'],
  record: ([sample, state, ...words]) => ({
    record: 'sorting',
    sample,
    state,
    note: words.length === 0 ? undefined : words.join(' '),
  }),
});
