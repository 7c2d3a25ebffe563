// What looks wrong in a profile's stages: their order, a pupa left out, how long they last.
import {rateModel} from '../thermal/rate-model.ts';
import type {Doubt} from './profile-doubts.ts';
import type {TaxonProfile} from './schema/index.ts';
import {compareStages} from './stage.ts';

/** Orders in which a pupa stands between larva and adult. */
const WITH_PUPA: readonly string[] = [
  'Coleoptera',
  'Diptera',
  'Hymenoptera',
  'Lepidoptera',
  'Mecoptera',
  'Megaloptera',
  'Neuroptera',
  'Raphidioptera',
  'Siphonaptera',
  'Strepsiptera',
  'Trichoptera',
];

/**
 * Days a stage lasts at 25 °C, or where it is fastest if that is cooler, from the fastest to the slowest that anybody
 * rears. Beyond them a figure is mostly one in hours, weeks or degree-hours. Common practice, no source.
 */
const USUAL_DAYS: Readonly<Record<string, readonly [number, number]>> = {
  egg: [0.4, 60],
  larva: [0.4, 400],
  nymph: [0.4, 700],
  prepupa: [0.2, 60],
  pupa: [1, 60],
};
/** One instar of several. */
const USUAL_INSTAR_DAYS = [0.3, 150] as const;
const COMPARED_AT_C = 25;

/** @returns nothing where all looks as in other profiles */
export function doubtsAboutStages(profile: TaxonProfile): Doubt[] {
  return [...outOfOrder(profile), ...withoutPupa(profile), ...unusualDays(profile)];
}

function outOfOrder({stages}: TaxonProfile): Doubt[] {
  return stages.flatMap(({stage}, i) => {
    const before = stages[i - 1]?.stage;
    return before !== undefined && compareStages(before, stage) > 0
      ? [{field: `stages.${i}.stage`, why: `${stage} stands after ${before}, which comes later in life`}]
      : [];
  });
}

function withoutPupa({classification, stages}: TaxonProfile): Doubt[] {
  const {order} = classification;
  if (order === undefined || !WITH_PUPA.includes(order)) return [];
  const nymph = stages.findIndex(({stage}) => stage.startsWith('nymph'));
  if (nymph >= 0)
    return [
      {field: `stages.${nymph}.stage`, why: `${order} have larvae and a pupa, no ${stages[nymph]!.stage}`},
    ];
  const has = (kind: string) => stages.some(({stage}) => stage.startsWith(kind));
  return has('pupa') || !has('larva')
    ? []
    : [{field: 'stages', why: `${order} have a pupa between larva and adult; none is given`}];
}

function unusualDays({stages}: TaxonProfile): Doubt[] {
  return stages.flatMap(({stage, rate}, i) => {
    const usual = stage.includes('-') ? USUAL_INSTAR_DAYS : USUAL_DAYS[stage];
    const model = rateModel(rate);
    const fastest = Math.max(...[15, 20, COMPARED_AT_C].map(temperature => model.ratePerDay(temperature)));
    if (usual === undefined || fastest <= 0) return [];
    const days = 1 / fastest;
    return days < usual[0] || days > usual[1]
      ? [
          {
            field: `stages.${i}.rate`,
            why: `${said(days)} days of ${stage} at up to ${COMPARED_AT_C} °C are unusual${inOtherUnits(days, usual)}`,
          },
        ]
      : [];
  });
}

/** What would make a usual figure of it. */
function inOtherUnits(days: number, [shortest, longest]: readonly [number, number]): string {
  const asHours = days / 24;
  if (days > longest && asHours >= shortest && asHours <= longest)
    return `; were it hours, it is ${said(asHours)} days`;
  const asDays = days * 24;
  return days < shortest && asDays >= shortest && asDays <= longest
    ? `; divided by 24 once too often, it is ${said(asDays)} days`
    : '';
}

function said(value: number): string {
  return String(value < 10 ? Math.round(value * 100) / 100 : Math.round(value));
}
