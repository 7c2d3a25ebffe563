// Licences that data may be given under.

/** Those under which aggregators take data. */
export const licences = {
  CC0: {
    name: 'Creative Commons Zero v1.0 Universal (CC0)',
    url: 'https://creativecommons.org/publicdomain/zero/1.0/legalcode',
  },
  'CC-BY': {
    name: 'Creative Commons Attribution 4.0 International (CC BY 4.0)',
    url: 'https://creativecommons.org/licenses/by/4.0/legalcode',
  },
  'CC-BY-NC': {
    name: 'Creative Commons Attribution Non Commercial 4.0 International (CC BY-NC 4.0)',
    url: 'https://creativecommons.org/licenses/by-nc/4.0/legalcode',
  },
} as const;

export type LicenceName = keyof typeof licences;

export const licenceNames: readonly LicenceName[] = ['CC0', 'CC-BY', 'CC-BY-NC'];
