// What killing agents, preservatives and solvents can do to people, and how carefully they are used. Limits are dated
// figures of one country; local rules and the safety data sheet come first.
import type {RecordOf} from './schema/index.ts';

export type Medium = RecordOf<'sample'>['medium'];

export interface AgentCaution {
  readonly agent: string;
  readonly caution: string;
  readonly source: string;
}

const FOLLOW = 'follow its safety data sheet and local rules';

export const agentCautions = {
  glycol: {
    agent: 'ethylene glycol',
    caution: `poisonous when drunk and sweet to animals: cover traps, keep it from pets and wildlife, take it home; propylene glycol is less poisonous; ${FOLLOW}`,
    source: 'encyclopaedic and veterinary texts on ethylene glycol poisoning (secondary sources)',
  },
  ethanol: {
    agent: 'ethanol',
    caution: `burns: flash point 13 °C, no flame or spark near it, fresh air; ${FOLLOW}`,
    source: 'NIOSH Pocket Guide, ethyl alcohol; ICSC 0044',
  },
  isopropanol: {
    agent: 'isopropanol',
    caution: `burns, and its vapour irritates: no flame or spark near it, fresh air; ${FOLLOW}`,
    source: 'common practice, no source',
  },
  'ethyl-acetate': {
    agent: 'ethyl acetate',
    caution: `burns easily and makes drowsy: closed killing jars, fresh air, no flame; US limit 400 ppm; ${FOLLOW}`,
    source: 'NIOSH IDLH 141786; ICSC 0367',
  },
  chloroform: {
    agent: 'chloroform',
    caution: `suspected of causing cancer, US limit 2 ppm over an hour: use something else if you can, never without a fume hood; ${FOLLOW}`,
    source: 'NIOSH IDLH 67663',
  },
  cyanide: {
    agent: 'cyanide',
    caution:
      'kills people in small amounts: only where it is lawful, and by people trained and licensed for it',
    source: 'common practice, no source',
  },
  formalin: {
    agent: 'formalin',
    caution: `irritates, sensitises and can cause cancer: gloves, eye protection, fume hood; ${FOLLOW}`,
    source: 'common practice, no source',
  },
  'toluene and xylene': {
    agent: 'toluene and xylene',
    caution: `solvents for the glue of sticky traps burn and harm when breathed (US limits 200 and 100 ppm): fume hood, gloves, no flame; ${FOLLOW}`,
    source: 'table of a county authority citing OSHA and NIOSH (secondary source)',
  },
} as const satisfies Readonly<Record<string, AgentCaution>>;

/** What to mind with what the catch fell into; undefined where it harms nobody. */
export function cautionOfMedium(medium: Medium): AgentCaution | undefined {
  return medium in agentCautions ? agentCautions[medium as keyof typeof agentCautions] : undefined;
}
