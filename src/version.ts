// The program's version, from package.json at build time.
import packageJson from '../package.json' with {type: 'json'};

export const version: string = packageJson.version;
