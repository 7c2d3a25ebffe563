// What happens to a lot, as forms.
import {balanceInWords} from '../../records/balance.ts';
import {inOrder} from '../../records/stage.ts';
import {type Lot, valueAt} from '../../records/state.ts';
import {accountedFor, leftOpen, WHEREABOUTS} from '../../work/not-accounted.ts';
import type {View} from '../sheet.ts';
import {
  candidates,
  type Field,
  type Form,
  given,
  needs,
  needsField,
  number,
  stages,
  text,
  type Values,
  yes,
} from './field.ts';

const animal: Field = {name: 'animal', label: 'animal', help: 'its number, where one is followed by itself'};
const when: Field = {
  name: 'at',
  label: 'when',
  help: 'empty for now; 08:40, yesterday 17:00, 2026-06-12T08:40',
};
const STAGE = 'egg, larva-1 …, nymph-1 …, prepupa, pupa';

const sum = (about: string, {facts}: View): readonly string[] => {
  const lot = facts.desk.state.lots.get(about);
  return lot === undefined ? [] : [balanceInWords(lot)];
};
const alive = (about: string, {facts}: View): string =>
  inOrder(facts.desk.state.lots.get(about)?.alive ?? {})
    .map(([stage, count]) => `${stage}=${count}`)
    .join(' ');
const unitField = (about: string, {facts: {desk}}: View, required?: true): Field => {
  const own = desk.state.lots.get(about)?.stays.at(-1)?.unit;
  const all = [...desk.state.units.values()].map(history => valueAt(history, desk.now).code);
  return {
    name: 'unit',
    label: 'unit',
    choices: all.filter(code => code !== own),
    help: 'left and right choose',
    ...(required === undefined ? {} : {required}),
  };
};
const about = (record: string, lot: string, {animal, at}: Readonly<Record<string, string>>) => ({
  record,
  lot,
  animal: text(animal),
  at: text(at),
});

/** Numbers by stage as far as they are typed. */
function seenIn(typed: string | undefined): Record<string, number> {
  return Object.fromEntries(
    Object.entries(stages(typed) ?? {}).flatMap(([stage, counted]) =>
      typeof counted === 'number' ? [[stage, counted] as const] : [],
    ),
  );
}

/** How many of those alive the count leaves open; none while nothing is typed. */
function openIn(code: string, {facts}: View, {stages: typed}: Values): number {
  if (text(typed) === undefined) return 0;
  return leftOpen(facts.desk.state.lots.get(code), seenIn(typed));
}

function othersFields(open: number): Field[] {
  return [
    {
      name: 'others',
      label: `the other ${open}`,
      choices: ['', ...WHEREABOUTS],
      help: `${open} not accounted for: eaten by the others, not found, or miscounted?`,
      required: true,
    },
    {name: 'why', label: 'why', help: 'how that is known'},
  ];
}

export const count: Form = {
  title: code => `animals of ${code} by stage`,
  fields: (code, view, values) => {
    const open = openIn(code, view, values);
    return [
      {name: 'stages', label: 'stages', help: 'larva-5=15 pupa=8', required: true, preset: alive(code, view)},
      {
        name: 'complete',
        label: 'all of them',
        choices: ['', 'yes', 'no'],
        ...(open === 0
          ? {help: 'empty: when the total is right'}
          : {help: `${open} fewer than are alive: were all looked at?`, required: true}),
      },
      ...(open === 0 || values.complete !== 'yes' ? [] : othersFields(open)),
      animal,
      when,
    ];
  },
  hints: sum,
  records: (code, values, view) => {
    const others = WHEREABOUTS.find(word => word === values.others);
    if (others !== undefined && values.complete === 'yes' && openIn(code, view, values) > 0) {
      const counted = {lot: code, stages: seenIn(values.stages), at: text(values.at)};
      return accountedFor(counted, others, text(values.why), view.facts.desk.state);
    }
    return [
      given({
        ...about('count', code, values),
        stages: stages(values.stages),
        complete: values.complete === 'no' ? false : yes(values.complete),
      }),
    ];
  },
  said: (code, {stages: counted}) => `${code}: ${counted} counted`,
};

export const hatch: Form = {
  title: code => `hatched in ${code}`,
  fields: () => [
    {name: 'count', label: 'number', required: true},
    {name: 'stage', label: 'as', help: 'empty: the first stage after the egg'},
    when,
  ],
  hints: sum,
  records: (code, values) => [
    given({...about('hatch', code, values), count: number(values.count), stage: text(values.stage)}),
  ],
  said: (code, {count: hatched}) => `${code}: ${hatched} hatched`,
};

export const loss: Form = {
  title: code => `lost from ${code}`,
  fields: () => [
    {name: 'count', label: 'number', required: true, preset: '1'},
    {name: 'stage', label: 'stage', help: STAGE},
    {
      name: 'cause',
      label: 'cause',
      choices: ['dead', 'escaped', 'eaten', 'missing', 'given', 'other'],
      preset: 'dead',
    },
    {name: 'note', label: 'sign', help: 'mould, limp, drowned, desiccated, handling …'},
    animal,
    when,
  ],
  hints: sum,
  records: (code, values) => [
    given({
      ...about('loss', code, values),
      count: number(values.count),
      stage: text(values.stage),
      cause: text(values.cause),
      note: text(values.note),
    }),
  ],
  said: (code, {count: lost, cause}) => `${code}: ${lost} ${cause}`,
};

export const found: Form = {
  title: code => `found in ${code} beyond those known`,
  fields: () => [
    {name: 'stage', label: 'stage', help: STAGE, required: true},
    {name: 'count', label: 'number', required: true, preset: '1'},
    {name: 'why', label: 'where', help: 'how they were overlooked'},
    when,
  ],
  hints: sum,
  records: (code, values) => [
    given({
      ...about('found', code, values),
      stage: text(values.stage),
      count: number(values.count),
      why: text(values.why),
    }),
  ],
  said: (code, {count: more}) => `${code}: ${more} found`,
};

export const voucher: Form = {
  title: code => `preserved from ${code}`,
  fields: () => [
    {name: 'stage', label: 'stage', help: STAGE},
    {name: 'count', label: 'number', required: true, preset: '1'},
    {name: 'together', label: 'one vial', choices: ['', 'yes'], help: 'several under one code'},
    {name: 'specimen', label: 'code', help: 'empty: the next one'},
    animal,
    when,
  ],
  hints: sum,
  records: (code, values) => [
    given({
      ...about('voucher', code, values),
      stage: text(values.stage),
      count: number(values.count),
      together: yes(values.together),
      specimen: text(values.specimen),
    }),
  ],
  said: (code, {count: kept}) => `${code}: ${kept} preserved`,
};

export const parasitoid: Form = {
  title: code => `parasitoids out of ${code}`,
  fields: () => [
    {name: 'count', label: 'number', required: true, preset: '1', help: 'how many came out'},
    {name: 'taxon', label: 'name', help: 'as known now'},
    {name: 'sex', label: 'sex', choices: ['', 'female', 'male', 'unknown'], help: 'of all of them'},
    {name: 'hosts', label: 'hosts', preset: '1', help: 'that died of them; 0 where they were counted before'},
    {name: 'hostStage', label: 'host stage', help: STAGE},
    {name: 'together', label: 'one vial', choices: ['', 'yes'], help: 'the whole brood under one code'},
    {name: 'hyper', label: 'hyper', choices: ['', 'yes'], help: 'they came out of parasitoids of the hosts'},
    {name: 'outOf', label: 'out of', help: 'the primary parasitoid, by name or code'},
    {name: 'remains', label: 'remains', help: 'code of the vial with the remains of the host'},
    {name: 'cocoon', label: 'cocoon', help: 'code of the vial with their cocoon'},
    animal,
    when,
  ],
  hints: (code, view) => [...sum(code, view), 'keep the remains of the host and its cocoon with them'],
  records: (code, values) => {
    const remains = text(values.remains);
    const cocoon = text(values.cocoon);
    return [
      given({
        ...about('parasitoid', code, values),
        count: number(values.count),
        taxon: text(values.taxon),
        sex: text(values.sex),
        hosts: number(values.hosts),
        hostStage: text(values.hostStage),
        together: yes(values.together),
        hyper: yes(values.hyper),
        outOf: text(values.outOf),
        remains: remains === undefined ? undefined : {code: remains, what: 'host-remains'},
        cocoon: cocoon === undefined ? undefined : {code: cocoon, what: 'cocoon'},
      }),
    ];
  },
  said: (code, {count: wasps}) => `${code}: ${wasps} parasitoids`,
};

export const move: Form = {
  title: code => `${code} moves`,
  fields: (code, view) => [unitField(code, view, true), when],
  records: (code, values) => [given({...about('move', code, values), unit: text(values.unit)})],
  said: (code, {unit}) => `${code} moved to ${unit}`,
};

export const split: Form = {
  title: code => `a part of ${code} becomes a lot of its own`,
  fields: (code, view) => [
    {name: 'into', label: 'new lot', required: true},
    {name: 'stages', label: 'stages', help: 'pupa=4', required: true},
    unitField(code, view),
    when,
  ],
  hints: sum,
  records: (code, values) => [
    given({
      ...about('split', code, values),
      into: text(values.into),
      stages: stages(values.stages),
      unit: text(values.unit),
    }),
  ],
  said: (code, {into}) => `${into} split off ${code}`,
};

export const merge: Form = {
  title: code => `${code} joins another lot and ends`,
  fields: (code, {facts: {desk}}) => {
    const {lots} = desk.state;
    const alike = [...lots.values()].filter(
      other => other.code !== code && other.closed === undefined && other.sample === lots.get(code)?.sample,
    );
    return [
      {
        name: 'into',
        label: 'into',
        required: true,
        choices: alike.map(other => other.code),
        help: 'of the same field sample',
      },
      when,
    ];
  },
  records: (code, values) => [given({...about('merge', code, values), into: text(values.into)})],
  said: (code, {into}) => `${code} merged into ${into}`,
};

export const weigh: Form = {
  title: code => `weight or photograph of ${code}`,
  fields: () => [
    animal,
    {name: 'weight', label: 'weight', help: 'mg'},
    {name: 'photo', label: 'photograph', help: 'name of the file'},
    {name: 'text', label: 'remark'},
    when,
  ],
  records: (code, {animal: one, weight, photo, text: said, at}) => [
    given({
      record: 'note',
      about: code,
      animal: text(one),
      weightMg: number(weight),
      photo: text(photo),
      text: text(said),
      at: text(at),
    }),
  ],
  said: code => `noted about ${code}`,
};

export const revise: Form = {
  title: code => `name of ${code}, what it may be and needs`,
  fields: (code, {facts: {desk}}) => {
    const lot = desk.state.lots.get(code);
    const named = (lot?.specimens ?? []).filter(one => {
      const specimen = desk.state.specimens.get(one);
      return specimen?.kind !== 'parasitoid' && (specimen?.identifications.length ?? 0) > 0;
    });
    const may = (lot?.candidates ?? []).map(({profile, weight}) => `${profile}=${weight}`).join(' ');
    return [
      {name: 'specimen', label: 'named after', choices: ['', ...named], help: 'an identified specimen of it'},
      {name: 'taxon', label: 'name', help: 'empty: as that specimen is named'},
      {name: 'candidates', label: 'may be', help: 'pieris-rapae=0.7 lepidoptera=0.3', preset: may},
      {...needsField, preset: needsWritten(lot?.needs)},
      {name: 'why', label: 'why'},
    ];
  },
  records: (code, values, {facts: {desk}}) => [
    given({
      record: 'revision',
      lot: code,
      specimen: text(values.specimen),
      taxon: text(values.taxon),
      candidates: candidates(values.candidates),
      needs: needsNow(values.needs, desk.state.lots.get(code)?.needs),
      why: text(values.why),
    }),
  ],
  said: code => `${code} revised`,
};

/** What is kept with a lot, as it is typed. */
function needsWritten(kept: Lot['needs'] = {}): string {
  const said = (value: unknown) => (value === true ? 'yes' : value === false ? 'no' : value);
  return Object.entries(kept)
    .map(([name, value]) => `${name}=${said(value)}`)
    .join(' ');
}

/** Undefined where nothing changes, null where nothing is kept any longer. */
function needsNow(typed: string | undefined, kept: Lot['needs']): object | null | undefined {
  if ((typed?.trim() ?? '') === needsWritten(kept)) return undefined;
  return needs(typed) ?? null;
}

export const close: Form = {
  title: code => `${code} is finished`,
  fields: () => [{name: 'reason', label: 'reason', help: 'required while animals may be alive in it'}, when],
  hints: sum,
  records: (code, values) => [given({...about('close', code, values), reason: text(values.reason)})],
  said: code => `${code} closed`,
};
