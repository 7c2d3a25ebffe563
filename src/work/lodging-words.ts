// Where animals could live, in words and as `teneral plan` answers it.
import {dayWords, instantWords} from '../exchange/time-words.ts';
import {limitsWords} from './bearable.ts';
import type {Desk} from './desk.ts';
import type {Lodging, LodgingAnswer} from './lodging.ts';
import type {SaidLine, SaidLines} from './said-lines.ts';

export function lodgingWords(answer: LodgingAnswer, desk: Desk): SaidLines {
  return {
    title: `${answer.lot} · where ${animalsWords(answer.animals)} can live`,
    lines: [...needsLines(answer), ...placesLines(answer, desk), ...keepingLines(answer, desk)],
  };
}

function needsLines({needs, limits}: LodgingAnswer): SaidLine[] {
  const asks = [
    limitsWords(limits),
    ...(needs.litresEach === undefined ? [] : [`${needs.litresEach} L each`]),
    ...(needs.aerated ? ['aerated water'] : []),
    needs.predatory
      ? 'by themselves, as they eat others'
      : needs.besideEaters
        ? 'also beside animals that eat others'
        : 'nobody beside them that eats others',
  ];
  return [['they need', asks.join('; ')]];
}

/** What was asked for once is kept with the lot, and goes for every later question. */
function keepingLines({lot, asked = {}}: LodgingAnswer, {state}: Desk): SaidLine[] {
  const options = needsOptions(asked);
  if (options === '') return [];
  return [
    [
      'to keep',
      state.lots.has(lot)
        ? `teneral revise ${lot} ${options} keeps with the lot what was asked for here`
        : `teneral lot ${lot} … ${options} keeps with the lot what was asked for here`,
    ],
  ];
}

/** As they are typed. */
export function needsOptions(needs: NonNullable<LodgingAnswer['asked']>): string {
  const {litresEach, warmestC, coolestC, aerated, predatory, besideEaters} = needs;
  const value = (option: string, said: number | undefined) =>
    said === undefined ? [] : [`--${option} ${said}`];
  const flag = (option: string, said: boolean | undefined) =>
    said === undefined ? [] : [said ? `--${option}` : `--not-${option}`];
  return [
    ...value('litres-each', litresEach),
    ...value('warmest', warmestC),
    ...value('coolest', coolestC),
    ...flag('aerated', aerated),
    ...flag('predatory', predatory),
    ...flag('beside-eaters', besideEaters),
  ].join(' ');
}

/** The soonest that holds them all; where they can be parted today, only one that is free by tomorrow: a cold box is for a night. */
function bestOf({whole, parts}: LodgingAnswer, {civil, now}: Desk): Lodging | undefined {
  const [best] = whole;
  if (best === undefined || parts.length === 0) return best;
  return civil.dayOf(best.from) <= civil.addDays(civil.dayOf(now), 1) ? best : undefined;
}

/** The best, the way to do it today, and every unit with what speaks for or against it. */
function placesLines(answer: LodgingAnswer, desk: Desk): SaidLine[] {
  const {lot, animals, whole, some, unfit, parts} = answer;
  const best = bestOf(answer, desk);
  const isNow = ({from}: Lodging) => from <= desk.now;
  const lines: SaidLine[] = [];
  if (best !== undefined) lines.push(['best', bestWords(best, desk)]);
  if (parts.length > 0) {
    const shares = parts.map(part => `${part.animals} in ${part.unit} as ${part.lot}`);
    lines.push([
      best === undefined ? 'best' : 'today',
      `parted${best === undefined ? ' today' : ''}: ${shares.join(', ')}`,
    ]);
  } else if (whole.length + some.length > 0 && (best === undefined || !isNow(best)))
    lines.push(['today', `no unit holds ${animals}, and all together hold too few`]);
  for (const one of [...whole, ...some]) lines.push([one.unit, roomWords(one, animals, desk)]);
  for (const {unit, why} of unfit) lines.push([unit, `not fit: ${why}`]);
  if (whole.length + some.length === 0) lines.push(['best', `no unit is fit for ${lot}`]);
  return lines;
}

function bestWords({unit, place, from}: Lodging, {civil, now}: Desk): string {
  if (from <= now) return `${unit}, at ${place}`;
  const when = dayWords(civil.dayOf(from), civil, now);
  const until = when === 'tomorrow' ? 'in the cold box overnight' : 'in the cold box until then';
  return `${unit}, at ${place}, from ${instantWords(from, civil, now)}; ${until}`;
}

function roomWords({holds, from, beside, expectedC}: Lodging, animals: number, {civil, now}: Desk): string {
  return [
    holds === null
      ? 'room not judged'
      : holds < animals
        ? `holds ${holds} of ${animals}`
        : `holds all ${animals} (${holds})`,
    `${expectedC.toFixed(1)} °C`,
    ...(beside.length > 0 ? [`beside ${beside.join(', ')}`] : []),
    ...(from > now ? [`from ${instantWords(from, civil, now)}`] : []),
  ].join('; ');
}

function animalsWords(animals: number): string {
  if (animals === 0) return 'its animals';
  return animals === 1 ? '1 animal' : `${animals} animals`;
}

export function lodgingAnswer(answer: LodgingAnswer, desk: Desk) {
  const {civil} = desk;
  const told = ({unit, place, holds, from, beside, expectedC}: Lodging) => ({
    unit,
    place,
    holds,
    from: civil.iso(from),
    beside,
    expectedC,
  });
  const {lot, animals, needs, limits, whole, some, unfit, parts} = answer;
  const best = bestOf(answer, desk);
  return {
    lot,
    animals,
    needs: {
      litresEach: needs.litresEach ?? null,
      aerated: needs.aerated,
      predatory: needs.predatory,
      besideEaters: needs.besideEaters,
    },
    limits: {lowC: limits.low, highC: limits.high, from: limits.from},
    best: best === undefined ? null : told(best),
    holdAll: whole.map(told),
    holdSome: some.map(told),
    unfit,
    parts,
  };
}
