import {glyphsFor} from '../exchange/pictures/glyphs.ts';
import {textOfLines} from '../exchange/pictures/line.ts';
import {tree} from '../exchange/pictures/tree.ts';
import {openDesk} from '../work/desk.ts';
import {downTree, traceOf, upTree} from '../work/trace.ts';
import {type Command, examples} from './command.ts';

export const command: Command = {
  declare(command) {
    command.argument('<code>', 'a specimen, a lot, a field sample, or the vial of exuviae');
    examples(command, 'trace 26-031-A-1', 'trace 26-031');
  },
  async run(invocation, [code = '']) {
    const desk = await openDesk(invocation, 'all');
    const node = traceOf(desk, code);
    invocation.answer(node, () => {
      const glyphs = glyphsFor(process.env);
      const up = textOfLines(tree(upTree(node, desk), glyphs));
      const down = textOfLines(tree(downTree(node, desk), glyphs));
      if (node.down.length === 0) return up;
      return node.up.length === 0 ? down : `Where it came from\n${up}\n\nWhat came of it\n${down}`;
    });
  },
};
