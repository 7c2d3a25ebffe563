// What a forecast takes for granted, and what would help it, in plain sentences.

export interface Circumstances {
  readonly hidden: boolean;
  readonly survivalKnown: boolean;
  readonly diapauseChance: number;
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
  /** Somebody looked after the time by which 95 per cent were expected. */
  readonly late: boolean;
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
  if (known.late) said.push('Those that are left are late, in diapause, or dead: no date can tell which.');
  if (known.temperatureUnknown)
    said.push(
      'The temperature is not known for all of the time until the adults, so later dates are left open. Readings of its unit, or set points, would help.',
    );
  else if (known.withinHorizon < 0.95)
    said.push(
      `At the temperatures expected, ${asChance(1 - known.withinHorizon)} does not emerge within the 400 days looked at.`,
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
  if (!known.survivalKnown)
    said.push('No survival is known for this kind, so the numbers expected take it that none dies.');
  if (known.diapauseChance > 0.005)
    said.push(
      `${capitalised(asChance(known.diapauseChance))} found in this stage at this time of year rests (diapause) before it goes on; every date here holds for the others.`,
    );
  return said;
}

/** "about 3 in 4 animals" and the like. */
function asChance(chance: number): string {
  const tenths = Math.round(chance * 10);
  if (tenths >= 10) return 'nearly every animal';
  if (tenths <= 0) return `about 1 in ${Math.round(1 / Math.max(chance, 0.005))} animals`;
  return `about ${tenths} in 10 animals`;
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
