// The form for adults that came out, drawn.
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {dayWords, instantWords} from '../../exchange/time-words.ts';
import {partWords} from '../../records/daybook.ts';
import {total} from '../../records/stage.ts';
import type {EmergenceSheet, Page, Room, View} from '../sheet.ts';
import {codesOf, countOf, rangeOf} from './form.ts';

export function drawForm(form: EmergenceSheet, view: View, room: Room): Page {
  const {desk} = view.facts;
  const {civil, now, state} = desk;
  const lot = state.lots.get(form.lot);
  const {dot} = view.glyphs;
  const codes = form.saved ?? codesOf(form, state);
  const since = lot?.lastLook ?? lot?.startedAt;
  const rows: Line[] = [];
  let given = 0;
  for (const {sex, count, fate, condition} of form.adults) {
    const own = rangeOf(codes.slice(given, given + count));
    given += count;
    rows.push([
      piece(` ${String(count).padStart(4)} ${sex.padEnd(8)}`, 'seen'),
      piece(` ${own}${[fate, condition].map(one => (one === undefined ? '' : `, ${one}`)).join('')}`),
    ]);
  }
  const parasitoids = codes.slice(given);
  const more = (name: string, value: string | undefined): Line[] =>
    value === undefined ? [] : [[piece(` ${name.padEnd(13)} `, 'expected'), piece(value)]];
  const first =
    rows.length === 0 ? [line(' No adult yet: f, m or u for each, 3f for three females.', 'expected')] : [];
  const body = [
    ...more('found', dayWords(civil.dayOf(now), civil, now)),
    ...more('not yet out', since === undefined ? undefined : instantWords(since, civil, now)),
    [],
    ...first,
    ...rows,
    ...(form.number === '' ? [] : [line(` ${form.number.padStart(4)} _`, 'seen')]),
    [],
    ...more('fate', form.fate),
    ...more('as', form.subimago ? 'subimago' : undefined),
    ...more('condition', form.condition),
    ...more('kept with it', form.exuviae && partWords(form.exuviae)),
    ...more(
      'parasitoids',
      form.parasitoids === undefined
        ? undefined
        : `${form.parasitoids.count} ${form.parasitoids.taxon ?? ''} ${rangeOf(parasitoids)}`,
    ),
  ];
  const alive = lot === undefined ? 0 : total(lot.alive);
  const hidden = lot?.material !== undefined || lot?.counted === 'unknown';
  return {
    head: `adults of ${form.lot} ${dot} ${lot?.taxon ?? 'not yet identified'}`,
    aside: hidden ? 'number alive not known' : `${alive} alive, ${countOf(form)} come out`,
    body: body.slice(0, room.body),
    detail: [
      line(
        form.saved === undefined
          ? form.doubted
            ? ' enter once more writes it down all the same'
            : ' enter writes it down'
          : ' Written down. Label each specimen with its code now.',
        form.saved === undefined ? 'expected' : 'good',
      ),
      line(
        ' care   let adults harden before they are handled; keep exuviae and parasitoids with their codes',
      ),
    ],
  };
}
