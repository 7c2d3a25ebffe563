// A trace as people read it: what a code came from, and everything that came of it.

import type {TreeNode} from '../exchange/pictures/tree.ts';
import {instantWords} from '../exchange/time-words.ts';
import {sentenceOf} from '../records/daybook.ts';
import {atOf, type Entry} from '../records/entry.ts';
import {type TraceNode, trace} from '../records/trace.ts';
import type {Desk} from './desk.ts';

/** @param desk opened with reach `all`, so that what is archived is found @throws Refusal for an unknown code */
export function traceOf({state}: Desk, code: string): TraceNode {
  return trace(state, code);
}

/** The tree below a node: its entries, then what came of it. What its lot tells already, a specimen does not repeat. */
export function downTree(node: TraceNode, desk: Desk): TreeNode {
  const entries = node.kind === 'specimen' ? node.entries.filter(isOfSpecimen) : node.entries;
  return {
    text: titleOf(node),
    kind: 'seen',
    children: [
      ...entries.map(entry => entryLeaf(entry, desk)),
      ...node.down.map(child => downTree(child, desk)),
    ],
  };
}

/** The chain above a node, nearest first. */
export function upTree(node: TraceNode, desk: Desk): TreeNode {
  return {
    text: titleOf(node),
    kind: 'seen',
    children: [
      ...node.entries.map(entry => entryLeaf(entry, desk)),
      ...node.up.map(parent => upTree(parent, desk)),
    ],
  };
}

function isOfSpecimen({record}: Entry): boolean {
  return OF_SPECIMENS.has(record.record) || (record.record === 'voucher' && record.sample !== undefined);
}

const OF_SPECIMENS: ReadonlySet<string> = new Set(['identification', 'imago', 'preparation', 'note']);

function titleOf({kind, code, taxon, of}: TraceNode): string {
  const name = kind !== 'sample' ? kind : of === undefined ? 'field sample' : 'part of a field sample';
  return `${name} ${code}${taxon === undefined ? '' : `, ${taxon}`}`;
}

function entryLeaf(entry: Entry, {civil, now}: Desk): TreeNode {
  return {text: `${instantWords(atOf(entry), civil, now)}  ${sentenceOf(entry.record)}`, children: []};
}
