import {textOfLines} from '../exchange/pictures/line.ts';
import {lineOf} from '../work/daybook.ts';
import {openDesk} from '../work/desk.ts';
import {handover, takeOver} from '../work/handover.ts';
import {handoverLines} from '../work/handover-words.ts';
import {type Command, examples} from './command.ts';

export const command: Command = {
  declare(command) {
    command.option('--taken-over', 'sign it: you have read it, and the next note begins here');
    examples(command, 'handover', 'handover --taken-over');
  },
  async run(invocation, _, {takenOver}) {
    const desk = await openDesk(invocation);
    const {civil} = desk;
    if (takenOver === true) {
      const {applied, written, desk: after} = await takeOver(invocation, desk);
      invocation.answer(applied, () => written.map(entry => lineOf(entry, after)).join('\n'));
      return;
    }
    const note = await handover(desk);
    const iso = (at: number) => civil.iso(at);
    invocation.answer(
      {
        ...note,
        since: iso(note.since),
        until: note.until === null ? null : iso(note.until),
        takenOver: note.takenOver === null ? null : {...note.takenOver, at: iso(note.takenOver.at)},
        pressing: note.pressing.map(task => ({...task, latest: iso(task.latest)})),
        due: note.due.map(task => ({...task, latest: iso(task.latest)})),
        gaps: note.gaps.map(gap => ({...gap, from: iso(gap.from), to: iso(gap.to)})),
        arrivals: note.arrivals.map(arrival => ({...arrival, at: iso(arrival.at)})),
        notes: note.notes.map(written => ({...written, at: iso(written.at)})),
      },
      () => textOfLines(handoverLines(note, civil, invocation.columns)),
    );
  },
};
