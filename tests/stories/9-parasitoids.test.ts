// Parasitoids are not survivors: hosts and what came out of them are counted apart. Everything is invented.
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, refused, said, sample} from './story-room.ts';

const stories = [
  {hosts: 12, moths: 8, brood: 31, all: '25.0 %', known: '27.3 %'},
  {hosts: 20, moths: 16, brood: 14, all: '15.0 %', known: '15.8 %'},
];

describe.each(stories)('$hosts caterpillars followed singly', ({hosts, moths, brood, all, known}) => {
  const room = newRoom();
  const now = '2031-06-20T10:00';
  const of = {lot: 'R31-026', at: '2031-06-19T10:00'};
  const records: object[] = [
    sample('S1', '2031-05-30'),
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
    {
      ...{record: 'lot', code: 'R31-026', sample: 'S1', unit: 'C1', at: '2031-05-31T09:00'},
      ...{stages: {larva: hosts}, taxon: 'Lepidoptera'},
    },
  ];
  applied(room, now, records);

  it('asks whether many adults out of one animal came out of it as their host', () => {
    const words = refused(room, now, 'emerge', 'R31-026', '--unsexed', String(brood), '--animal', '07');
    expect(words).toContain(`${brood} adults of the one animal 07`);
    expect(words).toContain('"parasitoid"');
    expect(words).toContain(`${brood} from one host: parasitoids?`);
  });

  it('asks so too where nobody says which, and leads from the number of a vial to its animal', () => {
    const many = refused(room, now, 'emerge', 'R31-026', '--unsexed', String(hosts + 9));
    expect(many).toContain(`${hosts + 9} emerged where ${hosts} are alive`);
    expect(many).toContain(`If several came out of one as their host, record them as parasitoids`);
    expect(refused(room, now, 'emerge', 'R31-026-07')).toContain(
      'there is no lot R31-026-07. For one animal of lot R31-026 name the lot, and say --animal 07',
    );
  });

  it('keeps a brood under one host, with what is left of it', () => {
    const words = said(
      ...([room, now, 'parasitoid', 'R31-026', String(brood), '--taxon', 'Braconidae'] as const),
      ...['--animal', '07', '--together', '--remains', 'R31-026-07-x'],
    );
    expect(words).toContain(`${brood} parasitoids (Braconidae) out of 1 animal, animal 07`);
    expect(words).toContain('host remains R31-026-07-x');
  });

  it('offers the remains of the host and the cocoon as parts under the same number', () => {
    const own = newRoom();
    applied(own, now, records);
    const parasitoid = ['parasitoid', 'R31-026', '--taxon', 'Braconidae', '--animal', '11'];
    const offered = said(own, now, ...parasitoid);
    expect(offered).toContain('the remains of the host as R31-026-p1a');
    expect(offered).toContain('a cocoon as R31-026-p1b');
    said(own, now, 'correct', 'e4', 'remains.code=R31-026-p1a', 'cocoon.code=R31-026-p1b');
    const kept = said(own, now, 'daybook', 'R31-026');
    expect(kept).toContain('R31-026-p1a');
    expect(kept).toContain('R31-026-p1b');
  });

  it('asks what a fly named in a lot of caterpillars is, and takes it from whoever is sure', () => {
    const own = newRoom();
    applied(own, now, records);
    said(own, now, 'emerge', 'R31-026', '--unsexed', '1', '--animal', '02');
    const named = ['identify', 'R31-026-1', 'Muscidae'];
    expect(refused(own, now, ...named)).toContain(
      'Muscidae (Diptera) differs from the order of lot R31-026 (Lepidoptera): parasitoid, scavenger or mistake?',
    );
    said(own, now, 'identify', 'R31-026-1', 'Pieris rapae');
    said(own, now, ...named, '--sure');
  });

  it.each(['fly', 'flies', 'stilt-legged fly', 'Tachinidae', 'a tachinid', 'Exorista sp.', 'ichneumon wasp'])(
    'asks of an adult of caterpillars that is typed as %s what it is',
    name => {
      const own = newRoom();
      applied(own, now, records);
      said(own, now, 'emerge', 'R31-026', '--unsexed', '1');
      const words = refused(own, now, 'identify', 'R31-026-1', name);
      expect(words).toContain(
        'differs from the order of lot R31-026 (Lepidoptera): parasitoid, scavenger or mistake? If',
      );
      expect(words).toMatch(/teneral identify R31-026-1 .+ --parasitoid/);
    },
  );

  it('takes moths, butterflies and the lot’s own names without a question', () => {
    const own = newRoom();
    applied(own, now, records);
    said(own, now, 'emerge', 'R31-026', '--unsexed', '1');
    for (const name of ['hawk moth', 'butterfly', 'Noctuidae', 'Pieris sp.'])
      said(own, now, 'identify', 'R31-026-1', name);
  });

  it('records at once as a parasitoid what was entered as one of several moths, under its code', () => {
    const own = newRoom();
    applied(own, now, records);
    said(own, now, 'emerge', 'R31-026', '--female', '2', '--male', '3');
    const named = [
      'identify',
      'R31-026-4',
      'Exorista mella',
      '--parasitoid',
      '--det',
      'A. Namer',
      '--key',
      'k',
    ];
    expect(said(own, now, ...named)).toContain('the remains of the host as R31-026-4a');
    expect(said(own, now, ...named)).toContain('nothing was added');
    expect(said(own, now, 'balance', 'R31-026')).toContain(
      `= ${hosts - 5} alive + 4 emerged + 1 parasitised`,
    );
    const specimens = own.ask<{code: string; kind: string; sex: string; taxon: string}[]>(
      now,
      'list',
      'specimens',
    );
    const codes = (kind: string) => specimens.filter(one => one.kind === kind).map(({code}) => code);
    expect(codes('adult')).toEqual(['R31-026-1', 'R31-026-2', 'R31-026-3', 'R31-026-5']);
    expect(codes('parasitoid')).toEqual(['R31-026-4']);
    expect(specimens.find(({code}) => code === 'R31-026-4')).toMatchObject({
      taxon: 'Exorista mella',
      sex: 'male',
    });
    expect(refused(own, now, 'identify', 'R31-026-4', 'Phoridae', '--scavenger')).toContain(
      'R31-026-4 is no adult of a lot',
    );
  });

  it('records a scavenger as a specimen of the sample, and leaves the animal it is not in the lot', () => {
    const own = newRoom();
    applied(own, now, records);
    said(own, now, 'emerge', 'R31-026', '--unsexed', '1', '--animal', '02');
    const words = said(own, now, 'identify', 'R31-026-1', 'scuttle fly', '--scavenger');
    expect(words).toContain('1 adult (scuttle fly) found as a scavenger in lot R31-026');
    expect(words).toContain('counts as alive again; if it is dead: teneral loss R31-026 1 --cause dead');
    said(own, now, 'loss', 'R31-026', '1', '--cause', 'dead', '--animal', '02');
    expect(said(own, now, 'balance', 'R31-026')).toContain(`= ${hosts - 1} alive + 1 lost; lost: 1 dead`);
    expect(said(own, now, 'trace', 'R31-026-1')).toContain('field sample S1');
    expect(said(own, now, 'daybook', 'R31-026')).toContain('scavenger');
    expect(said(own, now, 'verify')).toContain('sound');
  });

  it('says of a lot that was closed that nobody knows what became of the animal a scavenger was taken for', () => {
    const own = newRoom();
    applied(own, now, [...records, {record: 'loss', ...of, count: hosts - 1, cause: 'dead'}]);
    said(own, now, 'emerge', 'R31-026', '--unsexed', '1', '--at', '2031-06-19T12:00');
    said(own, now, 'close', 'R31-026');
    expect(said(own, now, 'identify', 'R31-026-1', 'scuttle fly', '--scavenger')).not.toContain(
      'alive again',
    );
    expect(said(own, now, 'balance', 'R31-026')).toContain(
      `= 0 alive + ${hosts} lost; lost: ${hosts - 1} dead, 1 missing`,
    );
  });

  it('makes the balance and both shares of parasitism from hosts, not from wasps', () => {
    applied(room, now, [
      {record: 'parasitoid', ...of, taxon: 'Tachinidae', count: 1, hosts: 1, animal: '02'},
      {record: 'parasitoid', ...of, taxon: 'Ichneumonidae', count: 1, hosts: 1, animal: '11'},
      {record: 'loss', ...of, stage: 'larva', count: 1, cause: 'dead', animal: '04'},
      {record: 'emergence', ...of, adults: [{sex: 'female', count: moths}], sure: true},
    ]);
    expect(said(room, now, 'balance', 'R31-026')).toContain(
      `${hosts} started = 0 alive + ${moths} emerged + 3 parasitised + 1 lost`,
    );
    expect(said(room, now, 'outcome', 'R31-026')).toContain(
      `R31-026 ${hosts} started = 0 alive + ${moths} emerged + 3 parasitised + 1 lost; lost: 1 dead`,
    );
    expect(said(room, now, 'outcome', 'R31-026')).toContain(
      `parasitised 3 of ${hosts}, ${all}; 3 of ${hosts - 1} whose end is known, ${known}`,
    );
    expect(said(room, now, 'outcome', 'R31-026')).toContain(
      `products ${moths} adults + ${brood + 2} parasitoids = ${moths + brood + 2} specimens`,
    );
  });
});
