import {describe, expect, it} from 'vitest';
import {phasesOf, setPointsOf, stepping} from '../../src/climate/set-points.ts';
import type {Unit} from '../../src/records/state.ts';
import {civil, days} from './fake-civil.ts';

const unit = (more: Partial<Unit>): Unit => ({code: 'C1', type: 'cage', place: 'rack A', ...more});
const dayAndNight = unit({setPoints: {day: 25, night: 18, lightsOn: '06:00', lightsOff: '22:00'}});
const span = (from: string, to: string) => ({fromDays: days(from), toDays: days(to)});
const source = (of: Unit) => stepping(setPointsOf(of)!, of, civil, {basis: 'set-points'});

describe('setPointsOf', () => {
  it('is nothing at ambient temperature and where nothing is set', () => {
    expect(setPointsOf(unit({}))).toBeUndefined();
    expect(setPointsOf(unit({setPoints: {ambient: true}}))).toBeUndefined();
    expect(setPointsOf(unit({setPoints: {constant: 22}}))).toEqual({day: 22, night: 22});
  });
});

describe('stepping', () => {
  it('is one line for a constant set point, however long', () => {
    const [part] = source(unit({setPoints: {constant: 22}}))(span('2031-05-01 08:00', '2032-06-01 08:00'));
    expect(part!.temperatureC).toEqual([22, 22]);
  });

  it('steps when the lights go on and off', () => {
    const [part] = source(dayAndNight)(span('2031-05-01 12:00', '2031-05-02 12:00'));
    const [noon, off, on, end] = [
      days('2031-05-01 12:00'),
      days('2031-05-01 22:00'),
      days('2031-05-02 06:00'),
      days('2031-05-02 12:00'),
    ];
    expect(part!.temperatureC).toEqual([25, 25, 18, 18, 25, 25]);
    [noon, off, off, on, on, end].forEach((at, i) => {
      expect(part!.atDays[i]).toBeCloseTo(at!, 9);
    });
  });

  it('follows lights that burn over midnight', () => {
    const night = unit({setPoints: {day: 25, night: 18, lightsOn: '20:00', lightsOff: '04:00'}});
    const [part] = source(night)(span('2031-05-01 23:00', '2031-05-02 05:00'));
    expect(part!.temperatureC).toEqual([25, 25, 18, 18]);
  });
});

describe('phasesOf', () => {
  it('shortens the night by the hour that the clocks skip and lengthens it by the one they repeat', () => {
    const nightHours = (from: string, to: string) =>
      phasesOf(dayAndNight, civil, span(from, to))
        .filter(({phase}) => phase === 'night')
        .map(({fromDays, toDays}) => Math.round((toDays - fromDays) * 24));
    expect(nightHours('2031-03-28 12:00', '2031-03-31 12:00')).toEqual([8, 7, 8]);
    expect(nightHours('2031-10-24 12:00', '2031-10-27 12:00')).toEqual([8, 9, 8]);
  });

  it('takes the light of the unit where the set point is one, and is all day without light', () => {
    const lamp = unit({setPoints: {constant: 22}, light: {on: '08:00', off: '20:00'}});
    expect(
      phasesOf(lamp, civil, span('2031-05-01 00:00', '2031-05-02 00:00')).map(({phase}) => phase),
    ).toEqual(['night', 'day', 'night']);
    expect(phasesOf(unit({}), civil, span('2031-05-01 00:00', '2031-05-02 00:00'))).toHaveLength(1);
  });
});
