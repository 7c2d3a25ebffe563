import type {RateModel} from './rate-model.ts';

/** Published mean days at constant temperatures; the rate is 0 at the limits and beyond. */
export interface TableSpec {
  readonly kind: 'table';
  readonly points: readonly {readonly temperature: number; readonly days: number}[];
  readonly lower: number;
  readonly upper: number;
}

export declare function table(spec: TableSpec): RateModel;
