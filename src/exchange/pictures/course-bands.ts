// The rows below a course: how humid it was, and what the temperatures rest on, in words where there is room.
import type {Extent, Ground} from './course-extents.ts';
import type {Glyphs} from './glyphs.ts';
import {joinCells, type Kind, type Line, piece} from './line.ts';

/** One sign a step, from 0 to 100 %. */
export function humidityRow(moist: readonly (Extent | undefined)[], glyphs: Glyphs): Line {
  const signs = glyphs.humidity;
  return joinCells(
    moist.map(extent => {
      if (extent === undefined) return piece(' ');
      const share = (extent.low + extent.high) / 200;
      return piece(signs[Math.min(signs.length - 1, Math.max(0, Math.floor(share * signs.length)))]!, 'seen');
    }),
  );
}

/** Light as a bar, dark as nothing: by the middle of each step. */
export function lightRow(
  lit: readonly {readonly fromDays: number; readonly toDays: number}[],
  fromDays: number,
  toDays: number,
  columns: number,
  glyphs: Glyphs,
): Line {
  const step = (toDays - fromDays) / columns;
  return joinCells(
    Array.from({length: columns}, (_, column) => {
      const middle = fromDays + (column + 0.5) * step;
      const isLit = lit.some(span => span.fromDays <= middle && middle < span.toDays);
      return piece(isLit ? glyphs.light : ' ', 'plain');
    }),
  );
}

const LOOKS: Readonly<Record<Ground, {readonly kind: Kind; readonly word: string}>> = {
  read: {kind: 'plain', word: 'read'},
  filled: {kind: 'plain', word: 'filled'},
  expected: {kind: 'expected', word: 'expected'},
  unknown: {kind: 'mark', word: 'unknown'},
};

/** "━━ read ━━╌╌ filled ╌╌·· expected ··" */
export function basisRow(ground: readonly Ground[], glyphs: Glyphs): Line {
  const pieces = [];
  for (let i = 0; i < ground.length; ) {
    const here = ground[i]!;
    let length = 1;
    while (ground[i + length] === here) length++;
    const {kind, word} = LOOKS[here];
    const sign = here === 'unknown' ? ' ' : glyphs.basis[here];
    const label = ` ${word} `;
    const room = length - label.length;
    const before = Math.floor(room / 2);
    pieces.push(
      piece(room < 2 ? sign.repeat(length) : sign.repeat(before) + label + sign.repeat(room - before), kind),
    );
    i += length;
  }
  return joinCells(pieces);
}
