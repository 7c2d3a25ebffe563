// Every command with its one-line summary, grouped by purpose. A command's file is loaded only when it is asked for.
import {type CommandEntry, todayEntry} from './entry.ts';

const group = (name: string, entries: readonly Omit<CommandEntry, 'group'>[]): CommandEntry[] =>
  entries.map(entry => ({...entry, group: name}));

export const commands: readonly CommandEntry[] = [
  ...group('Every day:', [
    todayEntry,
    {
      name: 'ahead',
      summary: 'the days ahead: what is to be done, how long it takes, who takes it',
      load: () => import('./ahead.ts'),
    },
    {name: 'wait', summary: 'can it wait until the room opens again?', load: () => import('./wait.ts')},
    {name: 'done', summary: 'a task of the list is done', load: () => import('./done.ts')},
    {name: 'skip', summary: 'a task could not be done, and why', load: () => import('./skip.ts')},
    {name: 'care', summary: 'something was done that is not on the list', load: () => import('./care.ts')},
    {
      name: 'alerts',
      summary: 'what is amiss, what was done about it, what has passed',
      load: () => import('./alerts.ts'),
    },
    {
      name: 'acknowledge',
      summary: 'something amiss was seen to',
      load: () => import('./acknowledge.ts'),
    },
    {name: 'undo', summary: 'take back your last request', load: () => import('./undo.ts')},
    {
      name: 'forecast',
      summary: 'when adults emerge, and how sure that is',
      load: () => import('./forecast.ts'),
    },
    {
      name: 'plan',
      summary: 'at which temperature adults are there by a day',
      load: () => import('./plan.ts'),
    },
    {
      name: 'review',
      summary: 'how good forecasts were, and what finished lots taught',
      load: () => import('./review.ts'),
    },
    {name: 'log', summary: 'a temperature read by hand', load: () => import('./log.ts')},
    {name: 'emerge', summary: 'adults came out', load: () => import('./emerge.ts')},
    {name: 'check', summary: 'looked for adults, none was out', load: () => import('./check.ts')},
    {name: 'count', summary: 'animals seen, by stage', load: () => import('./count.ts')},
    {name: 'note', summary: 'a remark, a photograph, a weight', load: () => import('./note.ts')},
  ]),
  ...group('Arriving and housing:', [
    {name: 'sample', summary: 'a field sample was brought in', load: () => import('./sample.ts')},
    {
      name: 'subsample',
      summary: 'a part of a field sample that is sorted by itself',
      load: () => import('./subsample.ts'),
    },
    {name: 'bycatch', summary: 'what else was in the trap', load: () => import('./bycatch.ts')},
    {name: 'sort', summary: 'how far a field sample is sorted', load: () => import('./sort.ts')},
    {name: 'lot', summary: 'immatures of a sample begin life in a unit', load: () => import('./lot.ts')},
    {
      name: 'candidates',
      summary: 'what the animals of a lot may be, with weights and why',
      load: () => import('./candidates.ts'),
    },
    {
      name: 'unit',
      summary: 'a cage, aquarium or emergence box, or a change to one',
      load: () => import('./unit.ts'),
    },
    {name: 'logger', summary: 'a source of readings', load: () => import('./logger.ts')},
    {name: 'import', summary: 'readings from a logger’s file', load: () => import('./import.ts')},
  ]),
  ...group('What happens to a lot:', [
    {name: 'hatch', summary: 'larvae or nymphs hatched', load: () => import('./hatch.ts')},
    {name: 'loss', summary: 'animals died, escaped, were given away', load: () => import('./loss.ts')},
    {name: 'found', summary: 'animals found beyond those known', load: () => import('./found.ts')},
    {name: 'voucher', summary: 'an immature was preserved as evidence', load: () => import('./voucher.ts')},
    {name: 'parasitoid', summary: 'parasitoids came out of hosts', load: () => import('./parasitoid.ts')},
    {name: 'move', summary: 'a lot moves to another unit', load: () => import('./move.ts')},
    {name: 'split', summary: 'a part becomes a lot of its own', load: () => import('./split.ts')},
    {name: 'merge', summary: 'a lot joins another of the same sample', load: () => import('./merge.ts')},
    {name: 'imago', summary: 'a subimago moulted to the imago', load: () => import('./imago.ts')},
    {name: 'identify', summary: 'a specimen gets its name', load: () => import('./identify.ts')},
    {
      name: 'revise',
      summary: 'a lot’s name, what it may be or what it needs is known better',
      load: () => import('./revise.ts'),
    },
    {
      name: 'prepare',
      summary: 'a specimen was killed, prepared, stored',
      load: () => import('./prepare.ts'),
    },
    {name: 'close', summary: 'a lot is finished', load: () => import('./close.ts')},
  ]),
  ...group('Climate:', [
    {
      name: 'climate',
      summary: 'the temperature and humidity course of a unit',
      load: () => import('./climate.ts'),
    },
    {
      name: 'extremes',
      summary: 'a minimum–maximum thermometer was read',
      load: () => import('./extremes.ts'),
    },
    {
      name: 'water',
      summary: 'water was measured; without a unit: oxygen and ammonia (no room needed)',
      load: () => import('./water.ts'),
    },
    {
      name: 'air',
      summary: 'humidity, dew point, wet bulb, salt solutions (no room needed)',
      load: () => import('./air.ts'),
    },
    {
      name: 'readings',
      summary: 'what a logger said, what of it is doubted, how it compares',
      load: () => import('./readings.ts'),
    },
    {name: 'mask', summary: 'readings not to be trusted', load: () => import('./mask.ts')},
    {
      name: 'degree-days',
      summary: 'degree-days of a file or of one day’s extremes (no room needed)',
      load: () => import('./degree-days.ts'),
    },
    {
      name: 'rate',
      summary: 'how fast a rate model develops at a temperature (no room needed)',
      load: () => import('./rate.ts'),
    },
    {
      name: 'fit',
      summary: 'thresholds and curves from days at temperatures, of a table or of your lots',
      load: () => import('./fit.ts'),
    },
  ]),
  ...group('Looking things up:', [
    {
      name: 'trace',
      summary: 'from a specimen to its field sample, or from a sample to all that came of it',
      load: () => import('./trace.ts'),
    },
    {
      name: 'outcome',
      summary: 'survival, sexes, stage durations and life table of a lot',
      load: () => import('./outcome.ts'),
    },
    {name: 'balance', summary: 'the sum of a lot that must add up', load: () => import('./balance.ts')},
    {name: 'daybook', summary: 'what was done and seen, entry by entry', load: () => import('./daybook.ts')},
    {
      name: 'find',
      summary: 'search codes, names, places, people, days and notes',
      load: () => import('./find.ts'),
    },
    {
      name: 'open-ends',
      summary: 'what is not linked, labelled or identified yet',
      load: () => import('./open-ends.ts'),
    },
    {name: 'list', summary: 'samples, lots, units, loggers or specimens', load: () => import('./list.ts')},
    {
      name: 'profile',
      summary: 'what is known of development, with its sources',
      load: () => import('./profile.ts'),
    },
  ]),
  ...group('Handing over:', [
    {
      name: 'labels',
      summary: 'labels for specimens, cards for cages, jars and vials',
      load: () => import('./labels.ts'),
    },
    {
      name: 'handover',
      summary: 'the note to whoever takes over: what is pressing, due, amiss, new',
      load: () => import('./handover.ts'),
    },
    {name: 'sheet', summary: 'the care list on paper, to pin on the door', load: () => import('./sheet.ts')},
    {
      name: 'export',
      summary: 'a Darwin Core archive, CSV tables, the care ahead as a calendar',
      load: () => import('./export.ts'),
    },
  ]),
  ...group('The room:', [
    {name: 'init', summary: 'make a new room', load: () => import('./init.ts')},
    {name: 'demo', summary: 'make an example room and open it', load: () => import('./demo.ts')},
    {name: 'rules', summary: 'care rules: which hold, what they asked for', load: () => import('./rules.ts')},
    {name: 'rule', summary: 'a care rule, or a change to one', load: () => import('./rule.ts')},
    {name: 'calendar', summary: 'opening hours and closed days', load: () => import('./calendar.ts')},
    {name: 'person', summary: 'who works here, on which days', load: () => import('./person.ts')},
    {
      name: 'setting',
      summary: 'whether finished lots are learned from, and when it is midsummer',
      load: () => import('./setting.ts'),
    },
    {name: 'apply', summary: 'records from a file, all or nothing', load: () => import('./apply.ts')},
    {name: 'schema', summary: 'the JSON Schema of all records', load: () => import('./schema.ts')},
    {name: 'void', summary: 'an entry was wrong', load: () => import('./void.ts')},
    {
      name: 'correct',
      summary: 'an entry was wrong, and this is right',
      load: () => import('./correct.ts'),
    },
    {name: 'verify', summary: 'is everything on disk sound?', load: () => import('./verify.ts')},
    {name: 'restore', summary: 'go back to a sound copy', load: () => import('./restore.ts')},
    {name: 'archive', summary: 'put closed lots aside', load: () => import('./archive.ts')},
  ]),
];
