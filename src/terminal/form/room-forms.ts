// What holds for the whole room, as a form.
import {type Form, given, text} from './field.ts';

export const setting: Form = {
  title: () => 'what holds for the whole room',
  fields: (_, {facts: {desk}}) => [
    {
      name: 'finishedLots',
      label: 'finished lots',
      choices: ['used', 'left-out'],
      preset: desk.state.settings.finishedLots ?? 'used',
      help: 'what they taught begins the next forecast',
    },
    {
      name: 'midsummer',
      label: 'midsummer',
      preset: desk.state.settings.midsummer ?? '',
      help: 'where the animals come from, mm-dd: 06-21 in the north',
    },
  ],
  hints: () => ['Without a midsummer the latitude of the field sample tells the season.'],
  records: (_, {finishedLots, midsummer}) => [
    {record: 'setting', ...given({finishedLots: text(finishedLots), midsummer: text(midsummer)})},
  ],
  said: () => 'set for the whole room',
};
