// Field samples and what is made of them, as forms. A method brings the fields that it has.

import {readCoordinates} from '../../exchange/coordinates.ts';
import {unitTypeFor} from '../../records/housing.ts';
import {cautionsOf, type Method, methods, type TrapField, trapFieldsOf} from '../../records/methods.ts';
import {Refusal} from '../../records/refusal.ts';
import {waitedHours, waitedWords} from '../../records/standing.ts';
import {type RoomState, valueAt} from '../../records/state.ts';
import {MEDIUMS} from '../../records/vocabulary.ts';
import {
  candidates,
  type Field,
  type Form,
  given,
  givenOrNothing,
  needs,
  needsField,
  number,
  stages,
  text,
  type Values,
  yes,
} from './field.ts';

const TRAP: Readonly<Record<TrapField, Omit<Field, 'name'>>> = {
  lastEmptied: {label: 'last emptied', help: 'day or instant before this emptying'},
  traps: {label: 'traps', help: 'how many make up the sample'},
  bait: {label: 'bait or lure'},
  baitSince: {label: 'bait since', help: 'day'},
  lamp: {label: 'lamp'},
  meshMm: {label: 'mesh', help: 'mm'},
  acrossCm: {label: 'across', help: 'cm'},
  widthCm: {label: 'band width', help: 'cm'},
  turns: {label: 'turns', help: 'how often it goes round'},
  heightM: {label: 'height', help: 'm above the ground'},
};
const WORDS: ReadonlySet<string> = new Set(['lastEmptied', 'bait', 'baitSince', 'lamp']);

const methodIn = ({method = 'search'}: Values): Method =>
  Object.hasOwn(methods, method) ? (method as Method) : 'other';

export const sample: Form = {
  title: () => 'a field sample was brought in',
  fields(_, {facts: {desk}}, values) {
    const method = methodIn(values);
    const {usual} = methods[method];
    const today = desk.civil.dayOf(desk.now);
    const trap = trapFieldsOf(method).map((name): Field => {
      const preset = usual[name];
      return {name, ...TRAP[name], ...(preset === undefined ? {} : {preset: String(preset)})};
    });
    return [
      {name: 'code', label: 'code', required: true},
      {
        name: 'method',
        label: 'method',
        choices: Object.keys(methods),
        preset: 'search',
        help: methods[method].usually,
      },
      {
        name: 'from',
        label: 'from',
        required: true,
        preset: today,
        help: 'day or instant; of a trap, when it was set',
      },
      {name: 'to', label: 'to', help: 'when it was emptied'},
      ...trap,
      ...(methods[method].how === 'trap'
        ? [{name: 'medium', label: 'caught in', choices: MEDIUMS, preset: usual.medium ?? 'none'}]
        : []),
      {name: 'locality', label: 'locality'},
      {name: 'region', label: 'region'},
      {name: 'country', label: 'country'},
      {name: 'coordinates', label: 'coordinates', help: '46.2497, 8.0172 or 46° 14′ 59″ N, 8° 1′ 2″ E'},
      {name: 'uncertainty', label: 'uncertainty', help: 'm'},
      {name: 'datum', label: 'datum', preset: 'WGS84'},
      {name: 'elevation', label: 'elevation', help: 'm'},
      {name: 'habitat', label: 'habitat'},
      {name: 'host', label: 'host', help: 'plant or animal'},
      {name: 'hostPart', label: 'part of it', help: 'leaf, stem, root, nest …'},
      {name: 'collectors', label: 'collectors', help: 'names, parted by ;'},
      {name: 'permit', label: 'permit'},
      {name: 'note', label: 'remark'},
    ];
  },
  hints(_, {facts: {desk}}, values) {
    const method = methodIn(values);
    const from = text(values.from) ?? '';
    const medium = MEDIUMS.find(one => one === values.medium) ?? methods[method].usual.medium ?? 'none';
    const span = {from, ...given({to: text(values.to)})};
    const trap = given({lastEmptied: text(values.lastEmptied)});
    const waited = Number.isNaN(Date.parse(from))
      ? undefined
      : waitedHours({method, medium, collected: span, trap}, desk.civil);
    return [
      ...(waited === undefined ? [] : [waitedWords(waited)]),
      ...cautionsOf({method, medium}),
      `usually ${methods[method].usually || 'as the person decides'} (common practice, no source)`,
    ];
  },
  records: (_, values) => [
    given({
      record: 'sample',
      code: text(values.code),
      method: text(values.method),
      collected: given({from: text(values.from), to: text(values.to)}),
      trap: trapOf(values),
      medium: methods[methodIn(values)].how === 'trap' ? text(values.medium) : undefined,
      place: placeOf(values),
      habitat: text(values.habitat),
      host: text(values.host),
      hostPart: text(values.hostPart),
      collectors: text(values.collectors)?.split(/\s*;\s*/u),
      permit: text(values.permit),
      note: text(values.note),
    }),
  ],
  said: (_, {code}) => `field sample ${code} accepted`,
};

function trapOf(values: Values): object | undefined {
  const fields = trapFieldsOf(methodIn(values)).map(
    name => [name, WORDS.has(name) ? text(values[name]) : number(values[name])] as const,
  );
  return givenOrNothing(Object.fromEntries(fields));
}

function placeOf({locality, region, country, coordinates, uncertainty, datum, elevation}: Values) {
  const written = text(coordinates);
  const place = givenOrNothing({
    locality: text(locality),
    region: text(region),
    country: text(country),
    ...(written === undefined ? {} : readCoordinates(written)),
    verbatimCoordinates: written,
    uncertaintyM: number(uncertainty),
    elevationM: number(elevation),
  });
  return place === undefined ? undefined : {...place, ...given({datum: written && text(datum)})};
}

export const subsample: Form = {
  title: code => `a part of ${code} that is sorted by itself`,
  fields: code => [
    {name: 'code', label: 'code', required: true, preset: `${code}.1`},
    {name: 'part', label: 'which part', help: 'upper layer, tray 2 …'},
    {name: 'share', label: 'share', help: 'of the whole: 0.25'},
    {name: 'note', label: 'remark'},
  ],
  records: (of, {code, part, share, note}) => [
    given({
      record: 'subsample',
      of,
      code: text(code),
      part: text(part),
      share: number(share),
      note: text(note),
    }),
  ],
  said: (of, {code}) => `${code} taken of ${of}`,
};

export const bycatch: Form = {
  title: code => `what else was in ${code}`,
  fields: () => [
    {name: 'what', label: 'what', required: true},
    {
      name: 'kind',
      label: 'kind',
      choices: ['reptile', 'amphibian', 'small-mammal', 'bird', 'fish', 'arthropod', 'other'],
      preset: 'other',
    },
    {name: 'count', label: 'number', preset: '1'},
    {name: 'alive', label: 'alive', choices: ['', 'yes', 'no']},
    {name: 'done', label: 'what was done', required: true, help: 'released at once, 5 m off'},
  ],
  hints: () => [
    'vertebrates are often protected: free them at once where they were caught, follow local rules',
  ],
  records: (code, {what, kind, count, alive, done}) => [
    given({
      record: 'bycatch',
      sample: code,
      what: text(what),
      kind: text(kind),
      count: number(count),
      alive: alive === 'no' ? false : yes(alive),
      done: text(done),
    }),
  ],
  said: (code, {what}) => `${what} noted with ${code}`,
};

export const sorting: Form = {
  title: code => `how far ${code} is sorted`,
  fields: () => [
    {name: 'state', label: 'sorted', choices: ['unsorted', 'partly', 'sorted'], preset: 'partly'},
    {name: 'note', label: 'remark', help: 'what is out, where the rest is'},
  ],
  records: (code, {state, note}) => [given({record: 'sorting', sample: code, state, note: text(note)})],
  said: (code, {state}) => `${code}: ${state}`,
};

export const takeOut: Form = {
  title: code => `taken out of ${code} dead`,
  fields: () => [
    {name: 'stage', label: 'stage', preset: 'adult', help: 'adult, larva, nymph, pupa …'},
    {name: 'count', label: 'number', preset: '1', required: true},
    {name: 'taxon', label: 'name', help: 'as known now'},
    {name: 'sex', label: 'sex', choices: ['', 'female', 'male', 'unknown']},
    {name: 'together', label: 'one vial', choices: ['', 'yes'], help: 'several under one code'},
    {name: 'specimen', label: 'code', help: 'empty: the next one'},
  ],
  records: (code, {stage, count, taxon, sex, together, specimen}) => [
    given({
      record: 'voucher',
      sample: code,
      stage: text(stage),
      count: number(count),
      taxon: text(taxon),
      sex: text(sex),
      together: yes(together),
      specimen: text(specimen),
    }),
  ],
  said: (code, {count}) => `${count} taken out of ${code}`,
};

/** About a field sample, or about a specimen or lot whose eggs begin the lot. */
export const lot: Form = {
  title: code => `a lot begins from ${code}`,
  fields(code, {facts: {desk}}, values) {
    const {samples, lots, units} = desk.state;
    const isSample = samples.has(code);
    const taxon = text(values.taxon);
    const material = text(values.material) === undefined ? undefined : {what: '', amount: 1, unit: ''};
    const offered = unitTypeFor(samples.get(code), {taxon, material});
    const all = [...units.values()].map(history => valueAt(history, desk.now));
    const fitting = [
      ...all.filter(({type}) => type === offered),
      ...all.filter(({type}) => type !== offered),
    ];
    const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
    const next = letters.find(letter => !lots.has(`${code}-${letter}`)) ?? 'Z';
    return [
      {name: 'code', label: 'code', required: true, preset: `${code}-${isSample ? next : 'eggs'}`},
      {name: 'taxon', label: 'name', help: 'as known now'},
      {name: 'stages', label: 'stages', help: 'larva-4=18 larva-5=6', ...(isSample ? {} : {preset: 'egg=1'})},
      {name: 'material', label: 'or material', help: 'galls=40 pieces, fruit=1.2 kg: the animals are hidden'},
      {
        name: 'unit',
        label: 'unit',
        required: true,
        choices: fitting.map(one => one.code),
        preset: fitting[0]?.code ?? '',
        help: `usually ${offered.replace('-', ' ')} for such animals`,
      },
      {name: 'candidates', label: 'may be', help: 'pieris-rapae=0.7 lepidoptera=0.3'},
      needsField,
      {name: 'counted', label: 'counted', choices: ['exact', 'estimated', 'unknown'], preset: 'exact'},
      {name: 'within', label: 'give or take', help: 'of an estimate'},
      {name: 'ages', label: 'ages', choices: ['mixed', 'one-brood'], preset: 'mixed'},
      {name: 'foundAlive', label: 'seen alive', choices: ['', 'yes'], help: 'although the trap held water'},
      {name: 'note', label: 'remark'},
    ];
  },
  hints: (code, {facts: {desk}}) => {
    const origin = desk.state.samples.get(code);
    const waited = origin && waitedHours(origin, desk.civil);
    return waited === undefined ? [] : [waitedWords(waited)];
  },
  records: (code, values, {facts: {desk}}) => [
    given({
      record: 'lot',
      code: text(values.code),
      ...originOf(code, desk.state),
      unit: text(values.unit),
      taxon: text(values.taxon),
      stages: stages(values.stages),
      material: materialOf(values.material),
      candidates: candidates(values.candidates),
      needs: needs(values.needs),
      counted: text(values.counted),
      within: number(values.within),
      ages: text(values.ages),
      foundAlive: yes(values.foundAlive),
      note: text(values.note),
    }),
  ],
  said: (_, {code}) => `lot ${code} begun`,
};

function originOf(code: string, {specimens, lots}: RoomState): object {
  if (specimens.has(code)) return {from: {specimen: code}};
  return lots.has(code) ? {from: {lot: code}} : {sample: code};
}

function materialOf(value: string | undefined): object | undefined {
  const given = text(value);
  if (given === undefined) return undefined;
  const [, what, amount, unit] = /^(.+?)=([\d.,]+)\s*(.*)$/u.exec(given) ?? [];
  if (what === undefined)
    throw new Refusal(`"${given}" is no material`, 'material', 'Write galls=40 pieces, or fruit=1.2 kg.');
  return {what, amount: number(amount), unit: unit === '' ? 'pieces' : unit};
}
