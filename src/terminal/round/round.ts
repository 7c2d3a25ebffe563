// The round, the first sheet: what to do now, in the order of walking.
import type {SheetOf, SheetPart} from '../sheet.ts';
import {drawRound} from './draw.ts';
import {finished, roundKeys} from './keys.ts';

export const round: SheetPart<SheetOf<'round'>> = {
  title: 'the round',
  keys: roundKeys,
  draw: drawRound,
  finished,
};
