// Files of several sensors, of unnamed units, of humidity as a fraction, and of clocks that are off.
import {describe, expect, it} from 'vitest';
import {read, readShown, shown} from './reading.ts';

const LONG = `sensor,time,temp,rh
A,2026-05-30 09:00,21.4,62
B,2026-05-30 09:00,18.4,70
A,2026-05-30 09:10,21.5,61
B,2026-05-30 09:10,18.5,71
`;
const WIDE = `Time,Shelf 1 Temp (°C),Shelf 1 RH (%),Shelf 2 Temp (°C),Shelf 2 RH (%)
2026-05-30 09:00,21.4,62,18.1,71
`;

describe('rows of several sensors below one another', () => {
  it('are refused with their names where nobody says which is meant', () => {
    expect(() => read(LONG)).toThrow('readings of several sensors: A | B');
  });

  it('are read for the one that is named; the others are passed over and counted', () => {
    const file = read(LONG, {sensor: 'b'});
    expect(shown(file)).toEqual(['2026-05-30T09:00 18.4 70', '2026-05-30T09:10 18.5 71']);
    expect(file).toMatchObject({rows: 2, passedOver: 2, rejected: []});
  });

  it('are told apart by a column of names that no heading announces', () => {
    const bare = LONG.split('\n').slice(1).join('\n');
    expect(() => read(bare)).toThrow('readings of several sensors: A | B');
  });

  it('are refused also where the second begins far below the first rows', () => {
    const rows = (name: string) =>
      Array.from(
        {length: 500},
        (_, i) => `${new Date(i * 600_000 + 1.7e12).toISOString()},20.${i % 10},${name}`,
      );
    const text = ['time,temp,sensor', ...rows('A'), ...rows('B')].join('\n');
    expect(() => read(text)).toThrow('readings of several sensors: A | B');
    expect(read(text, {sensor: 'A'})).toMatchObject({rows: 500, passedOver: 500});
    expect(read(text, {sensor: 'B'})).toMatchObject({rows: 500, passedOver: 500});
  });

  it('without names are refused where they contradict one another', () => {
    const text = LONG.split('\n')
      .map(line => line.split(',').slice(1).join(','))
      .join('\n');
    const longer = `${text}2026-05-30 09:20,21,62\n2026-05-30 09:20,18,70\n`;
    expect(() => read(longer)).toThrow('3 of 6 rows give an instant another temperature');
  });

  it('a serial number on the first row only is no second sensor', () => {
    expect(
      readShown('name,Time,Celsius(°C),Serial Number\n1,2026-05-30 09:00,21.4,77\n2,2026-05-30 09:10,21.5\n'),
    ).toEqual(['2026-05-30T09:00 21.4', '2026-05-30T09:10 21.5']);
  });
});

describe('columns of several sensors side by side', () => {
  it('are asked for', () => {
    expect(() => read(WIDE)).toThrow('--sensor');
    expect(() => read('time,Temp (°C),RH,Temp (°C),RH\n2026-05-30 09:00,21,60,18,70\n')).toThrow('--columns');
  });

  it('are found by what their headings share, the humidity with its temperature', () => {
    expect(readShown(WIDE, {sensor: 'shelf 2'})).toEqual(['2026-05-30T09:00 18.1 71']);
    expect(() => read(WIDE, {sensor: 'shelf'})).toThrow();
    expect(() => read(WIDE, {sensor: 'shelf 3'})).toThrow('no sensor of the file is called "shelf 3"');
  });

  it('one temperature in two units is one sensor', () => {
    expect(readShown('time,Temp (°C),Temp (°F)\n2026-05-30 09:00,20,68\n')).toEqual(['2026-05-30T09:00 20']);
  });
});

describe('what a file leaves open', () => {
  it('temperatures of an unnamed unit that are hardly °C are refused, unless the unit is said', () => {
    const text = 'time,temp\n2026-05-30 09:00,71\n2026-05-30 09:10,72\n';
    expect(() => read(text)).toThrow('temperatures around 72 are hardly °C');
    expect(read(text, {unit: 'F'}).layout.unit).toBe('F');
    expect(read(text, {usual: {unit: 'F'}}).layout.unit).toBe('F');
  });

  it('temperatures around 290 are kelvin', () => {
    expect(read('time,temp\n2026-05-30 09:00,293.1\n').layout.unit).toBe('K');
  });

  it('the usual order of day and month decides only what the file does not', () => {
    const open = 'time,temp\n03/04/2026 09:00,20\n';
    expect(readShown(open, {usual: {order: 'dmy'}})).toEqual(['2026-04-03T09:00 20']);
    expect(readShown('time,temp\n25/04/2026 09:00,20\n', {usual: {order: 'mdy'}})).toEqual([
      '2026-04-25T09:00 20',
    ]);
  });

  it('humidity that never exceeds one is a fraction', () => {
    expect(readShown('time,temp,rh\n2026-05-30 09:00,20,0.5\n2026-05-30 09:10,20,1\n')).toEqual([
      '2026-05-30T09:00 20 50',
      '2026-05-30T09:10 20 100',
    ]);
    expect(readShown('time,temp,rh\n2026-05-30 09:00,20,0\n')).toEqual(['2026-05-30T09:00 20 0']);
  });

  it('readings of a clock that is ahead happened earlier', () => {
    expect(readShown('time,temp\n2026-05-30 09:00,20\n', {clockMs: 7 * 60_000})).toEqual([
      '2026-05-30T08:53 20',
    ]);
  });
});
