// What becomes of a specimen, and what is done about a wrong entry, as forms.
import {PREPARATIONS} from '../../records/vocabulary.ts';
import {STRANGERS, strangerRecords} from '../../work/not-its-own.ts';
import {type Form, given, number, text} from './field.ts';

export const identify: Form = {
  title: code => `name of ${code}`,
  fields: (code, {facts: {desk}}) => [
    {name: 'taxon', label: 'name', required: true},
    {name: 'qualifier', label: 'doubt', choices: ['', 'cf.', 'aff.', '?'], help: 'empty: none'},
    {name: 'rank', label: 'rank', choices: ['', 'species', 'genus', 'subfamily', 'family', 'order']},
    {name: 'by', label: 'det.', help: 'who identified it', preset: desk.session.by},
    {name: 'on', label: 'on', help: 'day', preset: desk.civil.dayOf(desk.now)},
    {name: 'note', label: 'remark', help: 'by what it was known: genitalia, key …'},
    {name: 'lot', label: 'lot too', choices: ['', 'yes'], help: 'its whole lot is called so from now on'},
    ...(desk.state.specimens.get(code)?.kind === 'adult'
      ? [{name: 'as', label: 'it is', choices: ['', ...STRANGERS], help: 'empty: an adult of the lot itself'}]
      : []),
  ],
  hints: (code, {facts: {desk}}) => {
    const lot = desk.state.lots.get(desk.state.specimens.get(code)?.lot ?? '');
    return lot === undefined ? [] : [`lot ${lot.code} is ${lot.taxon ?? 'without a name'}`];
  },
  records: (code, values, {facts: {desk}}) => {
    const lot = desk.state.specimens.get(code)?.lot;
    const taxon = text(values.taxon);
    const as = STRANGERS.find(word => word === values.as);
    return [
      ...(as === undefined ? [] : strangerRecords(code, as, taxon ?? '', desk.state, desk.civil)),
      given({
        record: 'identification',
        specimen: code,
        taxon,
        qualifier: text(values.qualifier),
        rank: text(values.rank),
        by: text(values.by),
        on: text(values.on),
        note: text(values.note),
      }),
      ...(values.lot === 'yes' && lot !== undefined
        ? [given({record: 'revision', lot, specimen: code, taxon})]
        : []),
    ];
  },
  said: (code, {taxon}) => `${code} is ${taxon}`,
};

export const prepare: Form = {
  title: code => `${code} is made to last`,
  fields: () => [
    {
      name: 'method',
      label: 'how',
      choices: ['', ...PREPARATIONS],
    },
    {name: 'medium', label: 'medium', help: 'ethanol 80 %'},
    {name: 'store', label: 'kept in', help: 'cabinet 3, drawer 12'},
    {name: 'killedAt', label: 'killed', help: 'instant; let it harden first'},
    {name: 'agent', label: 'with', help: 'freezer, ethyl acetate …'},
    {name: 'note', label: 'remark'},
  ],
  hints: () => [
    'killing agents and preservatives: fresh air, no flame, their safety data sheets, local rules',
  ],
  records: (code, values) => [
    given({
      record: 'preparation',
      specimen: code,
      method: text(values.method),
      medium: text(values.medium),
      store: text(values.store),
      killedAt: text(values.killedAt),
      agent: text(values.agent),
      note: text(values.note),
    }),
  ],
  said: code => `${code} prepared`,
};

export const imago: Form = {
  title: code => `${code} has moulted to the imago`,
  fields: (code, {facts: {desk}}) => [
    {name: 'skin', label: 'skin', help: 'the vial with its skin as a subimago', preset: `${code}b`},
    {
      ...{name: 'association', label: 'surely', choices: ['', '1', '2', '3', '4']},
      help: '1 same animal to 4 assumed; empty: not said',
      // One that was followed by itself left its own skin.
      preset: desk.state.specimens.get(code)?.animal === undefined ? '' : '1',
    },
    {name: 'at', label: 'when', help: 'instant; empty: now'},
  ],
  records: (code, {skin, association, at}) => {
    const vial = text(skin);
    return [
      given({
        record: 'imago',
        specimen: code,
        at: text(at),
        exuviae: vial === undefined ? undefined : given({code: vial, association: number(association)}),
      }),
    ];
  },
  said: code => `${code} is an imago`,
};

export const voidEntry: Form = {
  title: code => `an entry about ${code} was wrong`,
  fields: () => [
    {name: 'entry', label: 'entry', required: true, help: 'its id, as the daybook shows it: e118'},
    {name: 'reason', label: 'reason', help: 'what was wrong'},
  ],
  records: (_, {entry, reason}) => [given({record: 'void', entry: text(entry), reason: text(reason)})],
  said: (_, {entry}) => `${entry} no longer counts`,
};

/** The same record with other values; see work/correct.ts. */
export const correctEntry: Form = {
  title: code => `an entry about ${code} was wrong, and this is right`,
  fields: () => [
    {name: 'entry', label: 'entry', required: true, help: 'its id, as the daybook shows it: e118'},
    {name: 'changes', label: 'right is', required: true, help: 'count=3; stages.pupa=4; condition='},
    {name: 'reason', label: 'reason', help: 'what was wrong'},
  ],
  records: () => [],
  effect: ({entry = '', changes = '', reason}) => ({
    do: 'correct',
    entry: entry.trim(),
    changes: changes.split(/\s*;\s*/u).filter(one => one !== ''),
    reason: text(reason),
  }),
  said: (_, {entry}) => `${entry} put right`,
};
