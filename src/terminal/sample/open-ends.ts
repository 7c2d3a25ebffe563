// What is still missing of a field sample's specimens: no name, not identified.
import type {RoomState} from '../../records/state.ts';

export function openEnds(code: string, {specimens, samples}: RoomState): string[] {
  const own = [...specimens.values()].filter(({sample}) => sample === code);
  const unidentified = own.filter(({identifications}) => identifications.length === 0).map(one => one.code);
  const known = samples.get(code);
  return [
    ...(unidentified.length > 0 ? [`not yet identified: ${unidentified.join(' ')}`] : []),
    ...(known !== undefined && known.place?.latitude === undefined ? ['its place has no coordinates'] : []),
    ...(known !== undefined && (known.collectors ?? []).length === 0
      ? ['nobody is named as its collector']
      : []),
  ];
}
