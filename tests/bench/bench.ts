// Prints how fast the program is as ratios against yardsticks measured in the same run. `npm run bench` builds first.
import {benchImport} from './import.ts';
import {benchReadings} from './readings.ts';
import {benchToday} from './today.ts';

for (const bench of [benchReadings, benchImport, benchToday]) console.log(`${bench()}\n`);
