// The stretch of time that a question is about: so many days back, or from one instant to another.
import {readInstant} from '../exchange/instants.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Desk} from './desk.ts';

export interface SpanAsked {
  readonly fromDays: number;
  readonly toDays: number;
}

/** @throws Refusal where an instant is none, or the end is not after the beginning */
export function spanAsked(
  {days, from, to}: Readonly<Record<string, unknown>>,
  usualDays: number,
  {civil, now}: Desk,
): SpanAsked {
  const instant = (text: unknown, where: string): number | undefined => {
    if (typeof text !== 'string') return undefined;
    const at = readInstant(text, civil, now);
    if (at !== undefined) return at / MS_PER_DAY;
    throw new Refusal(`"${text}" is no instant`, where, 'Write it like 2026-05-30 or 2026-05-30T09:00.');
  };
  const toDays = instant(to, '--to') ?? now / MS_PER_DAY;
  const back = typeof days === 'number' ? days : usualDays;
  const fromDays = instant(from, '--from') ?? toDays - back;
  if (!(toDays > fromDays))
    throw new Refusal('the time asked about has no length', '--from', 'Give a --to that is after --from.');
  return {fromDays, toDays};
}
