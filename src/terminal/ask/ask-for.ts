// Several tasks at once: each kind of task is asked its questions once.

import {observationOf} from '../../care/observations.ts';
import type {Task} from '../../care/task.ts';
import type {AskedGroup} from './asking.ts';

export function askFor(tasks: readonly Task[]): AskedGroup[] {
  const groups = new Map<string, Task[]>();
  for (const task of tasks) {
    const kind = `${task.task} ${task.observe.join(' ')}`;
    groups.set(kind, [...(groups.get(kind) ?? []), task]);
  }
  return [...groups.values()].map(alike => ({
    title:
      alike.length === 1
        ? `${alike[0]!.unit} ${wordsOf(alike[0]!)}`
        : `${wordsOf(alike[0]!)}, ${alike.length} together`,
    ids: alike.map(({id}) => id),
    questions: alike[0]!.observe.map(observationOf),
  }));
}

function wordsOf({task}: Task): string {
  return task.replaceAll('-', ' ');
}
