// The columns of a table of lots, as they begin.
import {columns} from './column.ts';

export const lotColumns = columns(`
  code sample fromSpecimen=from.specimen fromLot=from.lot unit taxon at:instant stages:counts counted:word
  within:number material=material.what materialAmount:number=material.amount materialUnit=material.unit
  ages:word foundAlive:yes-no note
  litresEach:number=needs.litresEach coolestC:number=needs.coolestC warmestC:number=needs.warmestC
  aerated:yes-no=needs.aerated predatory:yes-no=needs.predatory besideEaters:yes-no=needs.besideEaters
`);
