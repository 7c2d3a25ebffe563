// Keys that work on every sheet.
import {actsSheet} from '../acts/acts.ts';
import type {Binding} from '../bindings.ts';
import {isHome, roundHome, threadsHome} from '../homes.ts';
import type {Sheet, Step, View} from '../sheet.ts';

export const everywhere: readonly Binding<Sheet, View, Step>[] = [
  {
    strokes: ['u'],
    short: 'undo',
    says: 'take back your last request',
    hint: true,
    act: () => ({effects: [{do: 'undo'}]}),
  },
  {
    strokes: ['tab', 'back-tab'],
    short: 'round or threads',
    says: 'from the round to the threads, and back',
    hint: true,
    act: sheet => ({home: sheet.kind === 'round' ? threadsHome : roundHome}),
  },
  {
    strokes: ['/'],
    short: 'find',
    says: 'find a code, name, place, person, day or key',
    hint: true,
    act: () => ({open: {kind: 'find', text: '', cursor: 0}}),
  },
  {
    strokes: ['d'],
    short: 'write down',
    says: 'write down that a field sample was brought in, or that an entry was wrong',
    act: () => ({open: actsSheet('room', 'the room')}),
  },
  {
    strokes: ['!'],
    short: 'open ends',
    says: 'what is not linked, labelled or identified yet',
    act: () => ({open: {kind: 'open-ends', cursor: 0}}),
  },
  {
    strokes: ['P'],
    short: 'profiles',
    says: 'what is known of development, and days of your own made into a profile',
    act: () => ({open: {kind: 'profiles', cursor: 0}}),
  },
  {
    strokes: ['?'],
    short: 'all keys',
    says: 'this list',
    hint: true,
    disabled: sheet => (sheet.kind === 'keys' ? 'these are all keys' : undefined),
    act: sheet => ({open: {kind: 'keys', of: sheet.kind, scroll: 0}}),
  },
  {
    strokes: ['escape'],
    short: 'back',
    says: 'back to the sheet before',
    hint: true,
    act: () => ({back: true}),
  },
  {
    strokes: ['q'],
    short: 'quit',
    says: 'back, and from a home sheet out of the program',
    hint: true,
    act: sheet => (isHome(sheet) ? {effects: [{do: 'quit'}]} : {back: true}),
  },
  {
    strokes: ['ctrl-c'],
    short: 'leave',
    says: 'out of the program at once',
    act: () => ({effects: [{do: 'quit'}]}),
  },
];
