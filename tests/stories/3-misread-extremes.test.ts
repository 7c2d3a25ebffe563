// A minimum–maximum thermometer misread, and one not reset. Units and figures are invented; the rule that a minimum is no
// higher than what the thermometer shows at either end is the weather observers' (common practice).
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, said} from './story-room.ts';

const stories = [
  {before: [17, 26, 21.5], wrong: [20.9, 25.2, 20.5], unreset: [16.8, 26.4, 20.8]},
  {before: [12, 19.5, 15], wrong: [14.4, 18.2, 13.9], unreset: [11.6, 19.9, 14]},
];

describe.each(stories)('a thermometer that showed $before and then $wrong', ({before, wrong, unreset}) => {
  const room = newRoom();
  const read = (logger: string, day: number, [minimum, maximum, now]: number[], reset?: boolean) => ({
    ...{record: 'extremes', logger, minimum, maximum, now, ...(reset === undefined ? {} : {reset})},
    ...{from: `2031-04-0${day - 1}T08:30`, to: `2031-04-0${day}T08:30`},
  });
  const thermometer = (code: string, logger: string) => [
    {record: 'logger', code: logger, kind: 'extremes'},
    {record: 'unit', code, type: 'cage', place: `rack A/${code}`, logger},
  ];
  applied(room, '2031-04-09T08:40', [
    ...thermometer('A1', 'M1'),
    ...thermometer('A2', 'M2'),
    read('M1', 8, before, true),
    read('M1', 9, wrong, true),
    read('M2', 8, unreset),
    read('M2', 9, unreset),
  ]);
  const amiss = () => said(room, '2031-04-09T09:00', 'today');

  it('asks to read again a minimum above what it showed when it was read, and draws no course from it', () => {
    expect(amiss()).toContain(
      `M1 cannot have a minimum of ${wrong[0]} °C: it showed ${wrong[2]} °C when it was read or reset. Read it again. Until then no course is drawn from it`,
    );
  });

  it('keeps the entry all the same', () => {
    expect(said(room, '2031-04-09T09:00', 'daybook', 'M1')).toContain(`held ${wrong[0]} to ${wrong[1]} °C`);
  });

  it('takes both extremes of the day before for a thermometer that was not reset', () => {
    expect(amiss()).toMatch(/M2 .*not reset/);
  });
});
