// The form for adults that came out, drawn.
import {wrap} from '../../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {dayWords, instantWords} from '../../exchange/time-words.ts';
import {animalsOf} from '../../records/animals.ts';
import {partWords} from '../../records/daybook.ts';
import {total} from '../../records/stage.ts';
import type {Lot, RoomState} from '../../records/state.ts';
import type {EmergenceSheet, Page, Room, View} from '../sheet.ts';
import {codesOf, countOf, partCode, rangeOf} from './form.ts';

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
  const first =
    rows.length === 0 && form.parasitoids === undefined
      ? [line(' No adult yet: f, m or u for each, 3f for three females.', 'expected')]
      : [];
  const body = [
    ...more('found', form.at ?? dayWords(civil.dayOf(now), civil, now)),
    ...more('not yet out', since === undefined ? undefined : instantWords(since, civil, now)),
    ...more('animal', form.animal ?? followedSingly(lot)),
    ...more('name', form.taxon),
    [],
    ...first,
    ...rows,
    ...(form.number === '' ? [] : [line(` ${form.number.padStart(4)} _`, 'seen')]),
    [],
    ...(form.scavengers
      ? more('what', 'scavenger: of the field sample, none of the lot’s animals')
      : form.adults.length === 0 && form.parasitoids !== undefined
        ? []
        : more('fate', form.fate)),
    ...more('as', form.subimago ? 'subimago' : undefined),
    ...more('condition', form.condition),
    ...more('kept with it', form.exuviae && partWords(form.exuviae)),
    ...parasitoidLines(form, codes.slice(given), state),
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
      ...wrap(
        'let adults harden before they are handled; keep exuviae and parasitoids with their codes',
        room.columns - 10,
      ).map((words, i) => line(` ${i === 0 ? 'care  ' : '      '} ${words}`)),
    ],
  };
}

function more(name: string, value: string | undefined): Line[] {
  return value === undefined ? [] : [[piece(` ${name.padEnd(13)} `, 'expected'), piece(value)]];
}

/** "one of 02, 05, 07": those followed by themselves that are still expected. */
function followedSingly(lot: Lot | undefined): string | undefined {
  const open = lot === undefined ? [] : animalsOf(lot).filter(({end}) => end === undefined);
  return open.length === 0 ? undefined : `n names one of ${open.map(({animal}) => animal).join(' ')}`;
}

/** What came out of a host, and what of the host is kept or may be. */
function parasitoidLines(form: EmergenceSheet, codes: readonly string[], state: RoomState): Line[] {
  const {parasitoids} = form;
  if (parasitoids === undefined) return [];
  const {count, taxon = '', together, remains, cocoon} = parasitoids;
  const vial = together === true ? ', in one vial' : '';
  const part = (name: string, key: string, kept: string | undefined, code: string): Line[] =>
    kept === undefined && form.saved === undefined
      ? [line(` ${name.padEnd(13)} ${key} keeps it as ${code}`, 'expected')]
      : more(name, kept);
  return [
    ...more(
      'parasitoids',
      `${[count, taxon].filter(word => word !== '').join(' ')}, ${rangeOf(codes)}${vial}`,
    ),
    ...part('host remains', 'r', remains, partCode(form, 'remains', state)),
    ...part('cocoon', 'o', cocoon, partCode(form, 'cocoon', state)),
  ];
}
