// What animals need of the unit they live in, as it is typed.
import type {Command as Commander} from 'commander';
import {Refusal} from '../records/refusal.ts';
import {numberOption, type Options} from './command.ts';
import {numberWord} from './words.ts';

export function declareNeeds(command: Commander): Commander {
  return command
    .option('--litres-each <n>', 'room for each of them', numberWord)
    .option('--warmest <C>', 'they live no warmer than this', numberWord)
    .option('--coolest <C>', 'nor cooler than this', numberWord)
    .option('--aerated', 'their water is to be aerated')
    .option('--not-aerated', 'it need not be')
    .option('--predatory', 'they eat other animals of their unit')
    .option('--not-predatory', 'they do not')
    .option('--beside-eaters', 'they may live beside animals that eat others')
    .option('--not-beside-eaters', 'nobody may eat them');
}

/** Undefined where none was given. */
export function needsGiven(options: Options): Record<string, number | boolean> | undefined {
  const said = (yes: string, no: string) =>
    options[yes] === true ? true : options[no] === true ? false : undefined;
  const given = {
    litresEach: numberOption(options, 'litresEach'),
    warmestC: numberOption(options, 'warmest'),
    coolestC: numberOption(options, 'coolest'),
    aerated: said('aerated', 'notAerated'),
    predatory: said('predatory', 'notPredatory'),
    besideEaters: said('besideEaters', 'notBesideEaters'),
  };
  const fields = Object.entries(given).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value] as const],
  );
  return fields.length === 0 ? undefined : Object.fromEntries(fields);
}

/** The same for a question, which no schema checks. @throws Refusal where one of them makes no sense */
export function readNeeds(options: Options): Record<string, number | boolean> | undefined {
  const needs = needsGiven(options);
  const {litresEach, coolestC, warmestC} = needs ?? {};
  if (litresEach !== undefined && !(Number(litresEach) > 0))
    throw new Refusal(`${litresEach} L is no room`, '--litres-each', 'Write litres above 0: 0.5.');
  if (coolestC !== undefined && warmestC !== undefined && coolestC >= warmestC)
    throw new Refusal(
      `${coolestC} °C is not below ${warmestC} °C`,
      '--coolest',
      'Give the cooler one first.',
    );
  return needs;
}
