// Asked of an adult whose name is none of its lot's order: what it is, before anything is written down.
import type {AskingChoice} from './asking.ts';

export const WHAT_IS_IT: AskingChoice = {
  kind: 'choice',
  question: 'What is it?',
  choices: [
    {key: 'p', word: 'parasitoid'},
    {key: 's', word: 'scavenger'},
    {key: 'm', word: 'mistake'},
  ],
};
