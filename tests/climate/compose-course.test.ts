import {describe, expect, it} from 'vitest';
import {composeCourse} from '../../src/climate/compose-course.ts';
import type {Course} from '../../src/climate/course.ts';
import {degreeDay} from '../../src/thermal/degree-day.ts';
import {doseBetween} from '../../src/thermal/dose.ts';
import {firstPieceEndingAfter, temperatureWithin} from '../../src/thermal/trace.ts';
import {civil, days} from './fake-civil.ts';
import {courseInput, type RoomSketch, series, spells} from './room.ts';

const automatic = {kind: 'automatic', maxGapHours: 3} as const;
const cage = {type: 'cage', place: 'rack A/1'} as const;
const flat = (temperature: number) => () => temperature;

const at = (course: Course, local: string) => {
  const instant = days(local);
  return temperatureWithin(course, firstPieceEndingAfter(course, instant), instant);
};
const bases = (course: Course) =>
  course.stretches.map(({basis, of}) => (of === undefined ? basis : `${basis} ${of}`));
const localOf = (atDays: number) => {
  const ms = Math.round(atDays * 86_400_000);
  const minutes = Math.round((ms - civil.at(civil.dayOf(ms), '00:00')) / 60_000);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${civil.dayOf(ms)} ${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
};
const table = (course: Course) =>
  course.stretches.map(({fromDays, toDays, basis}) => `${localOf(fromDays)} – ${localOf(toDays)} ${basis}`);

/** One cage with one logger at 20 °C, read every ten minutes from 1 to 10 May, asked on 10 May. */
const readCage: RoomSketch = {
  from: '2031-05-01 00:00',
  now: '2031-05-10 00:00',
  to: '2031-05-20 00:00',
  units: {C1: [['always', {...cage, logger: 'L1'}]]},
  loggers: {L1: automatic},
  readings: {L1: series('2031-05-01 00:00', '2031-05-10 00:00', 10, flat(20))},
};
const withGap = spells(
  series('2031-05-01 00:00', '2031-05-04 00:00', 10, flat(20)),
  series('2031-05-05 12:00', '2031-05-10 00:00', 10, flat(20)),
);

describe('composeCourse, what was read', () => {
  it('joins the readings of the unit and adds how much warmer the animals are than the logger', () => {
    const rising = series(
      '2031-05-01 00:00',
      '2031-05-10 00:00',
      60,
      instant => 15 + (instant - days(readCage.from)),
    );
    const course = composeCourse(
      courseInput({
        ...readCage,
        units: {C1: [['always', {...cage, logger: 'L1', offsetC: 1.5}]]},
        readings: {L1: rising},
      }),
    );
    expect(at(course, '2031-05-03 12:20')).toBeCloseTo(15 + 2.5 + 20 / 1440 + 1.5, 9);
    expect(bases(course)[0]).toBe('logger L1');
    expect(course.atDays[0]).toBe(days('2031-05-01 00:00'));
    expect(course.atDays.at(-1)).toBe(days('2031-05-20 00:00'));
  });

  it('keeps the past as it was: boxes moved, heaters turned up, loggers swapped', () => {
    const course = composeCourse(
      courseInput({
        ...readCage,
        stays: [
          ['2031-05-01 00:00', 'C1'],
          ['2031-05-04 00:00', 'C2'],
        ],
        units: {
          C1: [
            ['always', {...cage, logger: 'L1'}],
            ['2031-05-02 00:00', {...cage, logger: 'L1', offsetC: 2}],
          ],
          C2: [
            ['always', {...cage, place: 'rack B', setPoints: {constant: 25}}],
            ['2031-05-06 00:00', {...cage, place: 'rack B', setPoints: {constant: 28}}],
            ['2031-05-08 00:00', {...cage, place: 'rack B', setPoints: {constant: 28}, logger: 'L2'}],
          ],
        },
        loggers: {L1: automatic, L2: automatic},
        readings: {
          L1: series('2031-05-01 00:00', '2031-05-10 00:00', 10, flat(20)),
          L2: series('2031-05-01 00:00', '2031-05-10 00:00', 10, flat(27)),
        },
      }),
    );
    expect(
      [
        '2031-05-01 12:00',
        '2031-05-03 12:00',
        '2031-05-05 12:00',
        '2031-05-07 12:00',
        '2031-05-09 12:00',
      ].map(local => at(course, local)),
    ).toEqual([20, 22, 25, 28, 27]);
    expect(table(course)).toEqual([
      '2031-05-01 00:00 – 2031-05-04 00:00 logger',
      '2031-05-04 00:00 – 2031-05-08 00:00 set-points',
      '2031-05-08 00:00 – 2031-05-10 00:00 logger',
      '2031-05-10 00:00 – 2031-05-20 00:00 expected',
    ]);
  });

  it('bridges a pause up to the allowed gap and the moments before the first and after the last reading', () => {
    const course = composeCourse(
      courseInput({
        ...readCage,
        readings: {
          L1: spells(
            series('2031-05-01 00:40', '2031-05-05 00:00', 10, flat(20)),
            series('2031-05-05 03:00', '2031-05-09 22:10', 10, flat(22)),
          ),
        },
      }),
    );
    expect(bases(course)).toEqual(['logger L1', 'expected recent days']);
    expect(at(course, '2031-05-05 01:30')).toBeCloseTo(21, 9);
    expect(course.expectedFromDays).toBe(days('2031-05-10 00:00'));
  });

  it('goes by the allowed gap of the logger at the time', () => {
    const input = courseInput({
      ...readCage,
      readings: {L1: series('2031-05-01 00:00', '2031-05-10 00:00', 360, flat(20))},
    });
    const code = 'L1';
    const history = [
      {from: Number.NEGATIVE_INFINITY, value: {code, ...automatic, maxGapHours: 6}},
      {from: days('2031-05-05 00:00') * 86_400_000, value: {code, ...automatic}},
    ];
    const course = composeCourse({...input, room: {...input.room, loggers: new Map([[code, history]])}});
    expect(table(course)[0]).toBe('2031-05-01 00:00 – 2031-05-05 00:00 logger');
    expect(course.stretches[1]!.basis).not.toBe('logger');
  });

  it('honours masks: what a person took out of the record is filled like a gap, until it is lifted', () => {
    const sunny = spells(
      series('2031-05-01 00:00', '2031-05-05 00:00', 10, flat(20)),
      series('2031-05-05 00:10', '2031-05-05 12:00', 10, flat(45)),
      series('2031-05-05 12:10', '2031-05-10 00:00', 10, flat(20)),
    );
    const mask = ['L1', '2031-05-05 00:10', '2031-05-05 12:00'] as const;
    const masked = composeCourse(
      courseInput({...readCage, readings: {L1: sunny}, masks: [[...mask, false]]}),
    );
    expect(at(masked, '2031-05-05 06:00')).toBeCloseTo(20, 6);
    expect(bases(masked)[1]).toBe('mean-day');
    const lifted = [
      [...mask, false],
      [...mask, true],
    ] as const;
    expect(
      at(composeCourse(courseInput({...readCage, readings: {L1: sunny}, masks: lifted})), '2031-05-05 06:00'),
    ).toBe(45);
  });

  it('draws extremes as a sine by the clock, and takes a person’s readings only where no logger reads', () => {
    const course = composeCourse(
      courseInput({
        ...readCage,
        readings: {L1: series('2031-05-01 00:00', '2031-05-02 00:00', 10, flat(20))},
        extremes: [['L1', '2031-05-03 08:00', '2031-05-04 08:00', 15, 25]],
        hand: [
          ['L1', '2031-05-01 09:00', 99],
          ['L1', '2031-05-05 09:00', 21],
          ['L1', '2031-05-06 09:00', 23],
          ['L1', '2031-05-08 09:00', 30],
        ],
      }),
    );
    expect(at(course, '2031-05-01 12:00')).toBe(20);
    expect(at(course, '2031-05-03 15:00')).toBeCloseTo(25, 9);
    expect(at(course, '2031-05-04 06:00')).toBeCloseTo(15, 9);
    expect(at(course, '2031-05-05 21:00')).toBeCloseTo(22, 9);
    expect(table(course).filter(row => /extremes|hand/.test(row))).toEqual([
      '2031-05-03 08:00 – 2031-05-04 08:00 extremes',
      '2031-05-05 09:00 – 2031-05-06 09:00 hand',
    ]);
  });

  it('joins the readings of a hand logger over 26 hours, imported ones among them', () => {
    const course = composeCourse(
      courseInput({
        ...readCage,
        now: '2031-05-03 09:00',
        loggers: {L1: {kind: 'hand', maxGapHours: 26}},
        readings: {L1: series('2031-05-02 08:00', '2031-05-02 08:00', 10, flat(24))},
        hand: [
          ['L1', '2031-05-01 08:00', 20],
          ['L1', '2031-05-03 08:00', 22],
        ],
      }),
    );
    expect(table(course)[0]).toBe('2031-05-01 00:00 – 2031-05-03 09:00 hand');
    expect(at(course, '2031-05-01 20:00')).toBeCloseTo(22, 9);
  });
});

describe('composeCourse, filling gaps', () => {
  it('fills from the neighbour with the offset learned where both read: a logger battery is dead for 58 hours', () => {
    // The unit stops on Friday 02:40 and reads again on Sunday 12:40; the logger of the rack goes on, at 20.5 °C on
    // the mean of the gap. The unit reads 0.8 °C more than the rack.
    const wave = (instant: number) =>
      20.5 + 2 * Math.sin(2 * Math.PI * (instant - days('2031-04-11 02:40')) * (12 / 29));
    const own = (from: string, to: string) => series(from, to, 10, instant => wave(instant) + 0.8);
    const course = composeCourse(
      courseInput({
        from: '2031-03-28 12:00',
        now: '2031-04-13 12:40',
        to: '2031-04-13 12:40',
        units: {
          A4: [['always', {type: 'cage', place: 'rack A/4', logger: 'LA'}]],
          R: [['always', {type: 'cage', place: 'rack A', logger: 'LR'}]],
        },
        loggers: {LA: automatic, LR: automatic},
        readings: {
          LA: spells(
            own('2031-03-28 12:00', '2031-04-11 02:40'),
            own('2031-04-13 12:40', '2031-04-13 12:40'),
          ),
          LR: series('2031-03-28 12:05', '2031-04-13 12:45', 10, wave),
        },
      }),
    );
    expect(table(course)).toEqual([
      '2031-03-28 12:00 – 2031-04-11 02:40 logger',
      '2031-04-11 02:40 – 2031-04-13 12:40 other-logger',
    ]);
    const above10 = degreeDay({kind: 'degree-day', lower: 10, degreeDays: 1});
    const {dose} = doseBetween(course, above10, days('2031-04-11 02:40'), days('2031-04-13 12:40'));
    // (20.5 + 0.8 − 10) °C for 58 h.
    expect(dose).toBeCloseTo((11.3 * 58) / 24, 2);
  });

  const besideGap: RoomSketch = {
    ...readCage,
    units: {
      C1: [['always', {...cage, logger: 'L1'}]],
      C2: [['always', {type: 'cage', place: 'rack A/2', logger: 'L2'}]],
    },
    loggers: {L1: automatic, L2: automatic},
  };
  const other = series('2031-05-01 00:00', '2031-05-10 00:00', 10, flat(17));

  it('takes the neighbour before the mean day, and no logger from another place', () => {
    const beside = composeCourse(courseInput({...besideGap, readings: {L1: withGap, L2: other}}));
    expect(bases(beside).slice(0, 3)).toEqual(['logger L1', 'other-logger L2', 'logger L1']);
    expect(at(beside, '2031-05-04 12:00')).toBeCloseTo(20, 9);
    const apart = composeCourse(
      courseInput({
        ...besideGap,
        units: {...besideGap.units, C2: [['always', {type: 'cage', place: 'cellar', logger: 'L2'}]]},
        readings: {L1: withGap, L2: other},
      }),
    );
    expect(bases(apart).slice(0, 3)).toEqual(['logger L1', 'mean-day', 'logger L1']);
  });

  it('fills nothing for longer than both loggers read together', () => {
    const late = series('2031-05-03 12:00', '2031-05-05 13:00', 10, flat(17));
    const course = composeCourse(courseInput({...besideGap, readings: {L1: withGap, L2: late}}));
    expect(bases(course)).not.toContain('other-logger L2');
  });

  it('falls back on the mean day only where a full day was read under the same set points', () => {
    const wave = (instant: number) => 20 + Math.cos(2 * Math.PI * instant);
    const waves = spells(
      series('2031-05-01 00:00', '2031-05-04 00:00', 10, wave),
      series('2031-05-05 12:00', '2031-05-10 00:00', 10, wave),
    );
    const course = composeCourse(courseInput({...readCage, readings: {L1: waves}}));
    for (const local of ['2031-05-04 03:00', '2031-05-04 14:30', '2031-05-05 02:00', '2031-05-05 09:30'])
      expect(Math.abs(at(course, local) - wave(days(local)))).toBeLessThan(0.03);

    // The heater was turned up when the logger fell silent: what was read before says nothing about it.
    const changed = composeCourse(
      courseInput({
        ...readCage,
        to: '2031-05-10 00:00',
        units: {
          C1: [
            ['always', {...cage, logger: 'L1', setPoints: {constant: 20}}],
            ['2031-05-04 00:00', {...cage, logger: 'L1', setPoints: {constant: 28}}],
          ],
        },
        readings: {L1: series('2031-05-01 00:00', '2031-05-04 00:00', 10, wave)},
      }),
    );
    expect(bases(changed)).toEqual(['logger L1', 'set-points']);
    expect(at(changed, '2031-05-07 00:00')).toBe(28);
  });

  it('falls back on the set points, and at ambient temperature on nothing', () => {
    const few = series('2031-05-01 00:00', '2031-05-01 06:00', 10, flat(20));
    const set = composeCourse(
      courseInput({
        ...readCage,
        units: {
          C1: [
            [
              'always',
              {...cage, logger: 'L1', setPoints: {day: 25, night: 18, lightsOn: '06:00', lightsOff: '22:00'}},
            ],
          ],
        },
        readings: {L1: few},
      }),
    );
    expect([at(set, '2031-05-04 12:00'), at(set, '2031-05-04 23:00')]).toEqual([25, 18]);
    expect(bases(set).slice(0, 2)).toEqual(['logger L1', 'set-points']);
    const ambient = composeCourse(
      courseInput({
        ...readCage,
        units: {C1: [['always', {...cage, logger: 'L1', setPoints: {ambient: true}}]]},
        readings: {L1: few},
      }),
    );
    expect(bases(ambient).slice(0, 2)).toEqual(['logger L1', 'unknown']);
    expect(at(ambient, '2031-05-04 12:00')).toBeNaN();
  });
});

describe('composeCourse, what comes next', () => {
  it('has exactly its set points for a unit without a logger, past and future', () => {
    const course = composeCourse(
      courseInput({...readCage, units: {C1: [['always', {...cage, setPoints: {constant: 22}}]]}}),
    );
    expect([...course.temperatureC]).toEqual([22, 22, 22]);
    expect(bases(course)).toEqual(['set-points', 'expected set points']);
  });

  it('corrects the set points by what the unit read in its last week, by day and by night', () => {
    const dayNight = (instant: number) => {
      const day = civil.dayOf(Math.round(instant * 86_400_000));
      const [on, off] = [civil.at(day, '06:00'), civil.at(day, '22:00')].map(ms => ms / 86_400_000);
      return instant >= on! - 1e-6 && instant < off! - 1e-6 ? 27 : 17.5;
    };
    const course = composeCourse(
      courseInput({
        ...readCage,
        units: {
          C1: [
            [
              'always',
              {...cage, logger: 'L1', setPoints: {day: 25, night: 18, lightsOn: '06:00', lightsOff: '22:00'}},
            ],
          ],
        },
        readings: {L1: series('2031-05-01 00:00', '2031-05-10 00:00', 1, dayNight)},
      }),
    );
    expect(at(course, '2031-05-15 12:00')).toBeCloseTo(27, 1);
    expect(at(course, '2031-05-15 23:00')).toBeCloseTo(17.5, 1);
    expect(bases(course).at(-1)).toBe('expected set points, corrected by recent readings');
  });

  it('does not correct by less than a day of readings, nor by readings under other set points', () => {
    const course = composeCourse(
      courseInput({
        ...readCage,
        units: {
          C1: [
            ['always', {...cage, logger: 'L1', setPoints: {constant: 20}}],
            ['2031-05-09 12:00', {...cage, logger: 'L1', setPoints: {constant: 28}}],
          ],
        },
      }),
    );
    expect(at(course, '2031-05-15 12:00')).toBe(28);
    expect(bases(course).at(-1)).toBe('expected set points');
  });

  it('repeats the mean day of the last week of readings at room temperature, by the clock', () => {
    const clock = (instant: number) => 20 + 3 * Math.cos(2 * Math.PI * (instant - days('2031-10-20 15:00')));
    const course = composeCourse(
      courseInput({
        ...readCage,
        from: '2031-10-10 00:00',
        now: '2031-10-22 00:00',
        to: '2031-11-05 00:00',
        readings: {L1: series('2031-10-10 00:00', '2031-10-22 00:00', 10, clock)},
      }),
    );
    // The clocks go back on 26 October: warmest at 15:00 before and after.
    for (const local of ['2031-10-23 15:00', '2031-11-03 15:00'])
      expect(at(course, local)).toBeGreaterThan(22.9);
    for (const local of ['2031-10-23 03:00', '2031-11-03 03:00'])
      expect(at(course, local)).toBeLessThan(17.1);
    expect(bases(course)).toEqual(['logger L1', 'expected recent days']);
  });

  it('expects the mean of what there is where less than a day was read, and nothing where nothing was', () => {
    const few = {...readCage, to: '2031-05-20 00:00', now: '2031-05-01 06:00'};
    const some = composeCourse(
      courseInput({...few, readings: {L1: series('2031-05-01 00:00', '2031-05-01 06:00', 10, flat(19))}}),
    );
    expect(at(some, '2031-05-10 00:00')).toBeCloseTo(19, 9);
    const none = composeCourse(courseInput({...few, readings: {}}));
    expect(bases(none)).toEqual(['unknown']);
    expect(none.temperatureC.every(Number.isNaN)).toBe(true);
  });

  it('begins where readings end when that is after now, and at now when they end before', () => {
    const earlier = composeCourse(courseInput({...readCage, now: '2031-05-06 00:00'}));
    expect(earlier.expectedFromDays).toBe(days('2031-05-10 00:00'));
    expect(table(earlier)).toEqual([
      '2031-05-01 00:00 – 2031-05-10 00:00 logger',
      '2031-05-10 00:00 – 2031-05-20 00:00 expected',
    ]);
    const later = composeCourse(courseInput({...readCage, now: '2031-05-12 00:00'}));
    expect(table(later)).toEqual([
      '2031-05-01 00:00 – 2031-05-10 00:00 logger',
      '2031-05-10 00:00 – 2031-05-12 00:00 mean-day',
      '2031-05-12 00:00 – 2031-05-20 00:00 expected',
    ]);
  });

  it('holds what it is asked to hold from there on', () => {
    const course = composeCourse(courseInput({...readCage, holdC: 15}));
    expect([at(course, '2031-05-09 00:00'), at(course, '2031-05-12 00:00')]).toEqual([20, 15]);
    expect(bases(course).at(-1)).toBe('held 15');
  });

  it('learns the recent days of a unit from before the lot came', () => {
    const course = composeCourse(courseInput({...readCage, from: '2031-05-09 23:00'}));
    expect(at(course, '2031-05-15 12:00')).toBeCloseTo(20, 9);
    expect(bases(course)).toEqual(['logger L1', 'expected recent days']);
  });

  it('needs few nodes for a far horizon: two at a constant set point, one an hour at most', () => {
    const far = {...readCage, to: '2032-06-13 00:00'};
    const repeated = composeCourse(courseInput(far));
    const set = composeCourse(
      courseInput({...far, units: {C1: [['always', {...cage, logger: 'L1', setPoints: {constant: 22}}]]}}),
    );
    const future = (course: Course) =>
      course.atDays.filter(instant => instant > course.expectedFromDays).length;
    expect(future(set)).toBe(1);
    expect(future(repeated)).toBeLessThanOrEqual((days(far.to) - days(far.now)) * 24 + 2);
  });
});

describe('composeCourse, always', () => {
  it('touches from the first node to the last, in order of time, NaN only where it says unknown', () => {
    const course = composeCourse(
      courseInput({...readCage, readings: {L1: withGap}, hand: [['L1', '2031-05-04 09:00', 21]]}),
    );
    course.stretches.forEach(({fromDays, toDays}, i) => {
      expect(toDays).toBeGreaterThan(fromDays);
      if (i > 0) expect(fromDays).toBe(course.stretches[i - 1]!.toDays);
    });
    expect(course.stretches.at(-1)!.toDays).toBe(course.atDays.at(-1));
    expect(course.atDays.every((instant, i) => i === 0 || instant >= course.atDays[i - 1]!)).toBe(true);
    expect(course.temperatureC.some(Number.isNaN)).toBe(false);
  });

  it('is unknown throughout where the lot has no stay or its unit is not known', () => {
    const input = courseInput(readCage);
    for (const stays of [[], [{unit: 'gone', from: 0}]])
      expect(bases(composeCourse({...input, stays}))).toEqual(['unknown']);
  });
});
