// How much of something a task takes: water from the unit's volume, food by the number that eat.
import type {Job} from './job.ts';
import {feeders} from './stages.ts';

/** "4 of 12 litres", "a third of the water", "54 mg food"; null where the rule gives no amount, or nobody was counted. */
export function amountOf({rule: {amount}, unit, lot}: Job): string | null {
  if (amount === undefined) return null;
  if ('share' in amount) {
    const {share} = amount;
    if (unit.volumeLitres === undefined) return `${shareWords(share)} of the water`;
    return `${tidy(share * unit.volumeLitres)} of ${tidy(unit.volumeLitres)} litres`;
  }
  const eating = lot === undefined ? 0 : feeders(lot);
  return eating === 0 ? null : `${tidy(eating * amount.each)} ${amount.of}`;
}

function shareWords(share: number): string {
  const known = [
    [1 / 4, 'a quarter'],
    [1 / 3, 'a third'],
    [1 / 2, 'half'],
    [3 / 4, 'three quarters'],
    [1, 'all'],
  ] as const;
  return known.find(([value]) => Math.abs(value - share) < 0.02)?.[1] ?? `${Math.round(100 * share)} %`;
}

/** To two figures that matter below ten, whole above. */
function tidy(value: number): string {
  return value >= 10 ? String(Math.round(value)) : String(Number(value.toPrecision(2)));
}
