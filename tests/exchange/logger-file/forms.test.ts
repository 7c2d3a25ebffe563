// The forms that loggers, and the people who keep their files, write. RFC 4180 for quotes and commas; ISO 8601 for
// instants; for the rest patterns seen in files and manuals, common practice without one source.
import {describe, expect, it} from 'vitest';
import {read, readShown} from './reading.ts';

const TWO = ['2026-05-30T09:00 21.4 62', '2026-05-30T09:10 -0.5 63.5'];

describe('a logger file is understood', () => {
  it.each<[string, string]>([
    ['comma', 'time,temperature,humidity\n2026-05-30T09:00,21.4,62\n2026-05-30T09:10,-0.5,63.5\n'],
    [
      'semicolon and decimal comma',
      'time;temperature;humidity\n2026-05-30 09:00;21,4;62\n2026-05-30 09:10;-0,5;63,5\n',
    ],
    [
      'semicolon and decimal point',
      'time;temperature;humidity\n2026-05-30 09:00;21.4;62\n2026-05-30 09:10;-0.5;63.5',
    ],
    ['tab', 'time\ttemperature\thumidity\n2026-05-30 09:00\t21.4\t62\n2026-05-30 09:10\t-0,5\t63,5\n'],
    [
      'lines that end with CR LF',
      'time,temperature,humidity\r\n2026-05-30T09:00,21.4,62\r\n2026-05-30T09:10,-0.5,63.5\r\n',
    ],
    [
      'lines that end with CR',
      'time,temperature,humidity\r2026-05-30T09:00,21.4,62\r2026-05-30T09:10,-0.5,63.5\r',
    ],
    ['no heading', '2026-05-30T09:00,21.4,62\n2026-05-30T09:10,-0.5,63.5\n'],
    [
      'quoted cells with a comma inside the heading and decimal commas',
      '"Date","Temp, °C","RH, %"\n"2026-05-30 09:00","21,4","62"\n"2026-05-30 09:10","-0,5","63,5"\n',
    ],
    [
      'preamble, a counter, a heading, a serial number on the first row only',
      'Logger export\nname: shelf 3\n\n#,Date,Celsius(°C),Humidity(%rh),Dew Point(°C),Serial Number\n' +
        '1,2026-05-30 09:00:00,21.4,62,13.8,1234567890\n2,2026-05-30 09:10:00,-0.5,63.5,-6.6\n',
    ],
    [
      'a row of units',
      'Time,Temp,RH\nyyyy-mm-dd hh:mm,°C,%\n2026-05-30 09:00,21.4,62\n2026-05-30 09:10,-0.5,63.5\n',
    ],
    ['date and time apart', 'Date,Time,Temp,RH\n30.05.2026,09:00,21.4,62\n30.05.2026,09:10,-0.5,63.5\n'],
    [
      'time left of the date',
      'Time,Date,Temp,RH\n09:00:00,30.05.2026,21.4,62\n09:10:00,30.05.2026,-0.5,63.5\n',
    ],
    ['day first', 'Zeit;Temperatur;Feuchte\n30.05.2026 09:00;21,4;62\n30.05.2026 09:10;-0,5;63,5\n'],
    ['month first, AM and PM', 'time,temp,rh\n5/30/2026 9:00 AM,21.4,62\n5/30/2026 9:10:00 am,-0.5,63.5\n'],
    [
      'a year of two digits',
      'time,temp,rh\n30/05/26 09:00,21.4,62\n30/05/26 09:10,-0.5,63.5\n31/05/26 09:10,ERR,\n',
    ],
    ['epoch seconds', 'epoch,temperature,humidity\n1780131600,21.4,62\n1780132200,-0.5,63.5\n'],
    ['epoch milliseconds', 'epoch,temperature,humidity\n1780131600000,21.4,62\n1780132200000,-0.5,63.5\n'],
    [
      'units behind the numbers',
      'time,air,rh\n2026-05-30 09:00,21.4 °C,62 %\n2026-05-30 09:10,-0.5 °C,63.5%\n',
    ],
    [
      'other columns around',
      'id,wind,time,x,temp,rain,hum\na,3,2026-05-30 09:00,,21.4,0,62\nb,4,2026-05-30 09:10,,-0.5,0,63.5\n',
    ],
    [
      'numbers with blanks before them',
      'time, temp, rh\n2026-05-30 09:00:00,  21.4,  62\n2026-05-30 09:10:00,  -0.5, 63.5\n',
    ],
  ])('%s', (_, text) => {
    expect(readShown(text)).toEqual(TWO);
  });

  it('12 AM is midnight and 12 PM noon', () => {
    expect(readShown('t,temp\n5/30/2026 12:30 AM,1\n5/30/2026 12:30 p.m.,2\n')).toEqual([
      '2026-05-30T00:30 1',
      '2026-05-30T12:30 2',
    ]);
  });

  it('seconds, fractions of them, and 24:00', () => {
    expect(readShown('time,temp\n2026-05-30 09:00:05.25,1\n2026-05-30 24:00,2\n')).toEqual([
      '2026-05-30T09:00:05.250 1',
      '2026-05-31T00:00 2',
    ]);
  });

  it('a bare day is its beginning', () => {
    expect(readShown('date,temperature\n2026-05-30,21\n2026-05-31,22\n')).toEqual([
      '2026-05-30T00:00 21',
      '2026-05-31T00:00 22',
    ]);
  });

  it('a quoted cell may hold line breaks and quotes', () => {
    expect(
      readShown('note,time,temp\n"he said\n""warm"", twice",2026-05-30 09:00,21\n"",2026-05-30 10:00,22\n'),
    ).toEqual(['2026-05-30T09:00 21', '2026-05-30T10:00 22']);
  });
});

describe('encodings', () => {
  const text = 'Zeit;Temperatur [°C];Feuchte [%]\n2026-05-30 09:00;21,4;62\n2026-05-30 09:10;-0,5;63,5\n';
  const utf16 = (mark: number[], swap: boolean) => {
    const body = Buffer.from(text, 'utf16le');
    return Buffer.concat([Buffer.from(mark), swap ? body.swap16() : body]);
  };

  it.each([
    ['UTF-8 with a byte order mark', Buffer.from(`\uFEFF${text}`), 'utf-8'],
    ['Latin-1', Buffer.from(text, 'latin1'), 'latin1'],
    ['UTF-16, little end first', utf16([0xff, 0xfe], false), 'utf-16le'],
    ['UTF-16, big end first', utf16([0xfe, 0xff], true), 'utf-16be'],
    ['UTF-16 without a mark', utf16([], false), 'utf-16le'],
  ])('%s', (_, bytes, encoding) => {
    const file = read(bytes);
    expect(file.encoding).toBe(encoding);
    expect(file.layout.unit).toBe('C');
    expect(readShown(bytes)).toEqual(TWO);
  });
});

describe('the temperature unit is read from the heading', () => {
  it.each([
    ['Temp (°F)', 'F'],
    ['Temp, °F (sensor C3)', 'F'],
    ['temp_f', 'F'],
    ['tempF', 'F'],
    ['Temperature Fahrenheit', 'F'],
    ['Rack C temp [degF]', 'F'],
    ['℉ temp', 'F'],
    ['T_air (K)', 'K'],
    ['temperature_kelvin', 'K'],
    ['temperature', 'C'],
    ['Temp (C)', 'C'],
    ['Celsius(°C)', 'C'],
    ['temperatureC', 'C'],
    ['Temperature Feeder', 'C'],
  ])('%s is in %s', (heading, unit) => {
    const value = {C: 21, F: 60, K: 294}[unit];
    const {layout} = read(`time,"${heading}"\n2026-05-30 09:00,${value}\n2026-05-30 10:00,${value}\n`);
    expect(layout.unit).toBe(unit);
  });

  it('and from a row of units below it', () => {
    expect(read('time,temp\n,°F\n2026-05-30 09:00,70\n').layout).toMatchObject({unit: 'F', firstLine: 3});
  });

  it('and from the cells', () => {
    expect(read('time,temp\n2026-05-30 09:00,70 °F\n').layout.unit).toBe('F');
  });
});

describe('the temperature among several columns', () => {
  it.each([
    ['Temp (°C),Temp (°F)', '21,70', 21, 'C'],
    ['shelf temperature,temperature', '30,21', 21, 'C'],
    ['apparent_temperature,temp_c', '30,21', 21, 'C'],
    ['dew point °C,set point °C,Kanal 1 °C', '10,25,21', 21, 'C'],
    ['battery %,wind chill °C,value', '90,2,21', 21, 'C'],
  ])('%s', (names, cells, temperature, unit) => {
    const result = read(`time,${names}\n2026-05-30 09:00,${cells}\n`);
    expect(result.layout.unit).toBe(unit);
    expect(result.kind === 'readings' && [...result.temperature]).toEqual([temperature]);
  });
});

describe('zones', () => {
  it('an offset in the file wins over --zone, for its civil days too', () => {
    const file = read('time,temp\n2026-05-30T23:30+02:00,1\n2026-05-31T00:30+02:00,2\n', {
      zone: 'Asia/Tokyo',
    });
    expect(file.zone.name).toBe('UTC+02:00');
    expect(readShown('time,temp\n2026-05-30T23:30+02:00,1\n2026-05-30T22:30Z,2\n')).toEqual([
      '2026-05-30T23:30 1',
      '2026-05-30T22:30 2',
    ]);
  });

  it('offsets that change with the clocks keep each instant’s own day', () => {
    const file = read(
      'time,temp\n2026-10-25T00:30+02:00,1\n2026-10-25T23:30+01:00,2\n2026-10-26T00:30+01:00,3\n',
    );
    expect(file.zone.name).toBe('UTC+02:00 and UTC+01:00');
    expect(file).toMatchObject({rows: 3, duplicates: 0});
    expect(readShown('time,temp\n2026-10-25T00:30+02:00,1\n2026-10-25T23:30+01:00,2\n')).toEqual([
      '2026-10-25T00:30 1',
      '2026-10-25T23:30 2',
    ]);
  });

  it('an offset in the heading counts for all rows', () => {
    const file = read('"Time, GMT-04:00",temp\n2026-05-30 09:00,1\n2026-05-30 10:00,2\n', {
      zone: 'Asia/Tokyo',
    });
    expect(file.zone.name).toBe('UTC-04:00');
    expect(file.kind === 'readings' && file.at[0]).toBe(Date.parse('2026-05-30T13:00Z'));
  });

  it('else instants are read in the zone that is given', () => {
    const file = read('time,temp\n2026-05-30 09:00,1\n', {zone: 'Europe/Amsterdam'});
    expect(file.kind === 'readings' && file.at[0]).toBe(Date.parse('2026-05-30T07:00Z'));
  });

  it('epoch seconds name no zone: their civil days are those of the zone that is given', () => {
    const file = read('epoch,temp\n1780131600,1\n', {zone: 'Europe/Amsterdam'});
    expect(file.zone.name).toBe('Europe/Amsterdam');
    expect(file.kind === 'readings' && file.at[0]).toBe(1780131600000);
  });

  it('a zone that does not exist is refused', () => {
    expect(() => read('time,temp\n2026-05-30 09:00,1\n', {zone: 'Amsterdam'})).toThrow(
      '--zone: there is no time zone "Amsterdam"',
    );
  });
});

describe('daily extremes', () => {
  it('a day with its minimum and maximum, in whichever order and among others', () => {
    const text =
      'date,precipitation,temp_max,temp_min,wind\n2012-01-01,0.0,12.8,5.0,4.7\n2012-01-02,10.9,10.6,2.8,4.5\n';
    expect(readShown(text)).toEqual(['2012-01-01 5 12.8', '2012-01-02 2.8 10.6']);
  });

  it.each(['date,min,max', 'day,minimum,maximum', 'Datum,Tmin °C,Tmax °C', 'date,Min Temp (C),Max Temp (C)'])(
    '%s',
    heading => {
      expect(readShown(`${heading}\n2012-01-01,5.0,12.8\n`)).toEqual(['2012-01-01 5 12.8']);
    },
  );

  it('beside a mean of the day; but readings with a time of day stay readings', () => {
    expect(read('date,tavg,tmin,tmax\n2012-01-01,8,5,12\n').kind).toBe('extremes');
    expect(read('time,temp,temp min,temp max\n2012-01-01 10:00,8,5,12\n').kind).toBe('readings');
  });

  it('in °F, days out of order, twice, and impossible ones accounted for', () => {
    const file = read(
      'date,min (F),max (F)\n2012-01-03,41,60\n2012-01-01,40,55\n2012-01-01,41,55\n2012-01-02,60,41\n2012-01-04,,50\n',
    );
    expect(file.layout.unit).toBe('F');
    expect(file).toMatchObject({
      kind: 'extremes',
      days: [
        {day: '2012-01-01', minimum: 40, maximum: 55},
        {day: '2012-01-03', minimum: 41, maximum: 60},
      ],
      rows: 5,
      duplicates: 1,
      rejected: [
        {row: 5, what: 'the minimum 60 is above the maximum 41'},
        {row: 6, what: 'the minimum is missing'},
      ],
    });
  });
});
