// What a forecast takes for granted, and what would help it, in plain sentences.
import {listed} from '../records/stage-words.ts';
import {asShare} from './chance-words.ts';

/** Of a lot long past its time. */
export const LATE = 'Those that are left are late, in diapause, or dead: no date can tell which.';

export interface Circumstances {
  /** Candidates of whose figures some are from memory. */
  readonly fromMemory: readonly string[];
  readonly hidden: boolean;
  readonly survivalKnown: boolean;
  /** Somebody looked after the time by which 95 per cent were expected. */
  readonly late: boolean;
  /** Of the room's own finished lots; null where they say too little. */
  readonly ownSurvival: number | null;
  /** Temperatures end before the animals are expected to be out. */
  readonly temperatureUnknown: boolean;
  /** The chance that an animal emerges within the horizon, where temperatures are known so far. */
  readonly withinHorizon: number;
  /** The chance that an animal is out already, unseen. */
  readonly outUnseen: number;
  /** Founders whose instar was not told. */
  readonly instarUnknown: boolean;
  /** Adults came out of a lot of hidden animals. */
  readonly outOfHidden: boolean;
  /** What was seen fits no candidate at any pace. */
  readonly unexplained: boolean;
  /** Counts more likely worthless than not. */
  readonly leftOut: number;
}

export function assumptionsOf(known: Circumstances): readonly string[] {
  const said: string[] = [];
  if (known.unexplained)
    said.push(
      'Nothing explains what was seen: no candidate at any pace. The dates are those expected from the start; look over the candidates, the counts and their dates.',
    );
  if (known.leftOut > 0)
    said.push(
      `${known.leftOut === 1 ? 'One count fits' : `${known.leftOut} counts fit`} so badly that a mistake is likelier, and ${known.leftOut === 1 ? 'is' : 'are'} left out.`,
    );
  if (known.temperatureUnknown)
    said.push(
      'The temperature is not known for all of the time until the adults, so later dates are left open. Readings of its unit, or set points, would help.',
    );
  else if (known.withinHorizon < 0.95)
    said.push(
      `At the temperatures expected ${asShare(1 - known.withinHorizon)} of them do not emerge within the 400 days looked at.`,
    );
  if (known.outUnseen > 0.5)
    said.push(
      'Adults are probably out already: nobody has looked since they were due, so dates may lie in the past.',
    );
  if (known.hidden)
    said.push(
      'Nobody knows how many animals there are, so the dates are those of one animal taken at random.',
    );
  if (known.outOfHidden)
    said.push(
      'Of those that came out only when they did is weighed, not how many: nobody knows of how many.',
    );
  if (known.instarUnknown)
    said.push('The instar was not told: it is taken as likely as the time each instar takes.');
  if (known.fromMemory.length > 0)
    said.push(
      `Some figures of ${listed(known.fromMemory)} are from memory, not read in a source: take its dates with care.`,
    );
  if (known.late) said.push(LATE);
  if (known.ownSurvival !== null)
    said.push(
      `The numbers expected take the survival of finished lots of this room: ${Math.round(known.ownSurvival * 100)} %.`,
    );
  if (!known.survivalKnown)
    said.push('No survival is known for this kind, so the numbers expected take it that none dies.');
  return said;
}
