// What an empty round shows: the lines that start a room, or that all is done.
import {type Line, line} from '../../exchange/pictures/line.ts';
import type {View} from '../sheet.ts';

export function firstLines({facts: {desk, today}}: View): Line[] {
  const {samples, units, lots} = desk.state;
  if (lots.size > 0)
    return [
      [],
      line(
        today.tasks.length > 0
          ? ' Everything of today is done.'
          : ' Nothing is due today. tab shows when adults are to come.',
      ),
    ];
  const steps: [boolean, string, string][] = [
    [true, 'the room is made', 'teneral init'],
    [samples.size > 0, 'a field sample comes in', 'teneral sample 26-001 search --collected 2026-06-01'],
    [
      units.size > 0,
      'a cage, aquarium or emergence box stands ready',
      'teneral logger L1 automatic && teneral unit C1 cage "rack A/1" --logger L1',
    ],
    [
      false,
      'its animals become a lot in it',
      'teneral lot 26-001-A C1 larva-3=12 --sample 26-001 --candidate lepidoptera',
    ],
    [false, 'the logger’s file is read in', 'teneral import L1 FILE.csv'],
  ];
  return [
    line(' This room is empty. These lines, in a shell, start it; this sheet follows.', 'heading'),
    [],
    ...steps.flatMap(([done, what, command]) => [
      line(`  ${done ? 'done' : '    '}  ${what}`, done ? 'good' : 'plain'),
      ...(done ? [] : [line(`    ${command}`, 'seen')]),
    ]),
  ];
}
