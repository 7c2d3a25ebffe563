// The stage bar: shares or numbers of animals by stage, as a bar of the stages' own signs, with words beside it.
import {compareStages, type Stage} from '../../records/stage.ts';
import {type Line, piece} from './line.ts';
import {stageLetter} from './stage-letter.ts';

/** The letter of adults in a bar, where a blank would be lost. */
const ADULT = '*';
/** A share below this is not named. */
const WORTH_NAMING = 0.005;

/**
 * @param shares of each stage, or numbers of animals; `adult` for those out already
 * @param width cells of the bar
 * @param words how a stage is named with its number: shares as per cent, or counts
 */
export function stageBar(
  shares: Readonly<Record<Stage, number>>,
  width: number,
  words: 'share' | 'count' = 'share',
): Line {
  const stages = Object.entries(shares)
    .filter(([, share]) => share > 0)
    .sort(([a], [b]) => compareStages(a, b));
  const sum = stages.reduce((total, [, share]) => total + share, 0);
  if (sum === 0) return [piece('nothing alive')];
  const named = stages.filter(([, share]) => words === 'count' || share / sum >= WORTH_NAMING);
  const cells = apportion(
    named.map(([, share]) => share),
    width,
  );
  const bar = named
    .map(([stage], i) => (stage === 'adult' ? ADULT : stageLetter(stage)).repeat(cells[i]!))
    .join('');
  const text = named.map(([stage, share]) =>
    words === 'count' ? `${share} ${stage}` : `${stage} ${Math.round((100 * share) / sum)} %`,
  );
  return [piece(bar, 'seen'), piece(`  ${text.join(', ')}`)];
}

/** Whole cells that add up to the width, every part at least one where there is room, the largest remainders first. */
function apportion(parts: readonly number[], width: number): number[] {
  const sum = parts.reduce((total, part) => total + part, 0);
  const exact = parts.map(part => (part / sum) * width);
  const cells = exact.map(part => Math.max(parts.length <= width ? 1 : 0, Math.floor(part)));
  let left = width - cells.reduce((total, cell) => total + cell, 0);
  const byNeed = exact.map((part, i) => ({i, need: part - cells[i]!})).sort((a, b) => b.need - a.need);
  for (let k = 0; left > 0; k = (k + 1) % byNeed.length, left--) cells[byNeed[k]!.i]!++;
  for (let k = byNeed.length - 1; left < 0 && k >= 0; k--) {
    const {i} = byNeed[k]!;
    while (left < 0 && cells[i]! > 1) {
      cells[i]!--;
      left++;
    }
  }
  return cells;
}
