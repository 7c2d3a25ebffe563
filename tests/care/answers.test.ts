import {describe, expect, it} from 'vitest';
import {readAnswers, seenOption} from '../../src/care/answers.ts';
import {knownKeys, observationOf} from '../../src/care/observations.ts';
import {Refusal} from '../../src/records/refusal.ts';

const refused = (pair: string, asked: string[] = []): Refusal => {
  try {
    readAnswers([pair], asked);
  } catch (error) {
    if (error instanceof Refusal) return error;
  }
  throw new Error(`${pair} was accepted`);
};

describe('readAnswers(pairs)', () => {
  it('reads yes and no, words, numbers and parts', () => {
    expect(
      readAnswers([
        'mould=no',
        'frass=Y',
        'foodLeft=some',
        'alive=18',
        'waterC=17.5',
        'fraction=1/3',
        'adults=0',
      ]),
    ).toEqual({
      mould: false,
      frass: true,
      foodLeft: 'some',
      alive: 18,
      waterC: 17.5,
      fraction: 1 / 3,
      adults: 0,
    });
    expect(readAnswers(['fraction=30%'])).toEqual({fraction: 0.3});
  });

  it('answers a word by its one key', () => {
    expect(readAnswers(['foodLeft=m'])).toEqual({foodLeft: 'much'});
  });

  it('reads the answer to a question of the room’s own as what it looks like', () => {
    expect(
      readAnswers(['wilted=yes', 'leaves=12', 'smell=sour milk'], ['wilted', 'leaves', 'smell']),
    ).toEqual({
      wilted: true,
      leaves: 12,
      smell: 'sour milk',
    });
  });

  it('refuses what is no answer and says what may be answered', () => {
    expect(refused('mould=maybe').mend).toBe('Answer yes or no.');
    expect(refused('foodLeft=lots').mend).toBe('Answer none, some or much.');
    expect(refused('alive=-1').mend).toContain('a whole number from 0');
    expect(refused('alive=1.5').what).toContain('1.5');
    expect(refused('waterC=99').mend).toContain('°C');
    expect(refused('fraction=3/2').mend).toContain('1/3');
    expect(refused('fraction=1/0').mend).toContain('1/3');
    expect(refused('mould=').what).toBe('"mould" is not answered');
    expect(refused('mould').what).toContain('key=value');
  });

  it('refuses a key that nobody asks for, naming the one that was meant', () => {
    expect(refused('mold=no').mend).toBe('Did you mean mould?');
    expect(refused('colour=red').mend).toContain('Known are');
  });
});

describe('the questions', () => {
  it('have each a key for every word, no two alike', () => {
    for (const key of knownKeys) {
      const {answer} = observationOf(key);
      if (answer.kind !== 'word') continue;
      expect(new Set(answer.words.map(word => word.key)).size).toBe(answer.words.length);
    }
  });

  it('say how they are answered on the command line', () => {
    expect(['foodLeft', 'mould', 'alive', 'fraction', 'wilted'].map(seenOption)).toEqual([
      '--seen foodLeft=none|some|much',
      '--seen mould=yes|no',
      '--seen alive=NUMBER',
      '--seen fraction=NUMBER',
      '--seen wilted=ANSWER',
    ]);
  });
});
