// A tree as indented lines, cut to a width.
import stringWidth from 'fast-string-width';
import {cut} from './fit.ts';
import type {Glyphs} from './glyphs.ts';
import {type Kind, type Line, piece} from './line.ts';

export interface TreeNode {
  readonly text: string;
  readonly kind?: Kind;
  readonly children: readonly TreeNode[];
}

/** The root at the left edge, every child one step in. */
export function tree(root: TreeNode, glyphs: Glyphs, width = Number.POSITIVE_INFINITY): Line[] {
  return [nodeLine('', root, width, glyphs.more), ...branches(root.children, '', glyphs, width)];
}

function branches(children: readonly TreeNode[], indent: string, glyphs: Glyphs, width: number): Line[] {
  return children.flatMap((child, i) => {
    const last = i === children.length - 1;
    const {branch, last: end, through, blank} = glyphs.tree;
    return [
      nodeLine(indent + (last ? end : branch), child, width, glyphs.more),
      ...branches(child.children, indent + (last ? blank : through), glyphs, width),
    ];
  });
}

function nodeLine(lead: string, {text, kind = 'plain'}: TreeNode, width: number, more: string): Line {
  const shown = cut(text, width - stringWidth(lead), more);
  return lead === '' ? [piece(shown, kind)] : [piece(lead, 'mark'), piece(shown, kind)];
}
