// Every kind of sheet with its part.

import {acts} from './acts/acts.ts';
import {answer} from './answer/answer.ts';
import {candidates} from './candidates/candidates.ts';
import {doubts} from './doubts/doubts.ts';
import {emergence} from './emergence/emergence.ts';
import {find} from './find/find.ts';
import {fit} from './fit/fit.ts';
import {form} from './form/form.ts';
import {keys} from './keys/keys.ts';
import {lot} from './lot/lot.ts';
import {openEnds} from './open-ends/open-ends.ts';
import {plan} from './plan/plan.ts';
import {profile} from './profile/profile.ts';
import {profiles} from './profiles/profiles.ts';
import {round} from './round/round.ts';
import {rules} from './rules/rules.ts';
import {sample} from './sample/sample.ts';
import type {Sheet, SheetKind, SheetOf, SheetPart, Tables} from './sheet.ts';
import {specimen} from './specimen/specimen.ts';
import {threads} from './threads/threads.ts';
import {unit} from './unit/unit.ts';

const parts: {readonly [Kind in SheetKind]: SheetPart<SheetOf<Kind>>} = {
  round,
  threads,
  lot,
  unit,
  doubts,
  sample,
  specimen,
  acts,
  'open-ends': openEnds,
  profiles,
  profile,
  fit,
  form,
  plan,
  rules,
  emergence,
  candidates,
  answer,
  find,
  keys,
};

/** Hand a sheet and its own part to something that works on any kind. */
export function withPart<Result>(
  sheet: Sheet,
  use: <Own extends Sheet>(part: SheetPart<Own>, own: Own) => Result,
): Result {
  switch (sheet.kind) {
    case 'round':
      return use(parts.round, sheet);
    case 'threads':
      return use(parts.threads, sheet);
    case 'lot':
      return use(parts.lot, sheet);
    case 'unit':
      return use(parts.unit, sheet);
    case 'doubts':
      return use(parts.doubts, sheet);
    case 'sample':
      return use(parts.sample, sheet);
    case 'specimen':
      return use(parts.specimen, sheet);
    case 'acts':
      return use(parts.acts, sheet);
    case 'open-ends':
      return use(parts['open-ends'], sheet);
    case 'profiles':
      return use(parts.profiles, sheet);
    case 'profile':
      return use(parts.profile, sheet);
    case 'fit':
      return use(parts.fit, sheet);
    case 'form':
      return use(parts.form, sheet);
    case 'plan':
      return use(parts.plan, sheet);
    case 'rules':
      return use(parts.rules, sheet);
    case 'emergence':
      return use(parts.emergence, sheet);
    case 'candidates':
      return use(parts.candidates, sheet);
    case 'answer':
      return use(parts.answer, sheet);
    case 'find':
      return use(parts.find, sheet);
    case 'keys':
      return use(parts.keys, sheet);
  }
}

/** The keys of every kind of sheet, for lists of keys. */
export const tables: Tables = parts;
