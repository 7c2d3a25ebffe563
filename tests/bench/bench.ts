// Prints how fast the program is as ratios against yardsticks measured in the same run. `npm run bench` builds first.

import {benchBigRoom} from './big-room.ts';
import {benchForecasts} from './forecasts.ts';
import {benchImport} from './import.ts';
import {benchReadings} from './readings.ts';
import {benchToday} from './today.ts';

for (const bench of [benchForecasts, benchReadings, benchImport, benchToday, benchBigRoom])
  console.log(`${bench()}\n`);
