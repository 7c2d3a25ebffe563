import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [['<unit>', 'the aquarium']],
  options: command =>
    command
      .option('--temperature <C>', 'of the water', numberWord)
      .option('--oxygen <mg/L>', 'dissolved oxygen', numberWord)
      .option('--ph <n>', 'pH', numberWord)
      .option('--ammonia <mg/L>', 'total ammonia', numberWord)
      .option('--nitrite <mg/L>', 'nitrite', numberWord)
      .option('--conductivity <µS/cm>', 'conductivity', numberWord)
      .option('--hardness <mg/L>', 'hardness as calcium carbonate', numberWord)
      .option('--level <L>', 'water in it', numberWord),
  examples: ['water T1 --temperature 18 --oxygen 9 --ph 7.8'],
  record: ([unit], {temperature, oxygen, ph, ammonia, nitrite, conductivity, hardness, level}) => ({
    record: 'water',
    unit,
    temperature,
    oxygenMgL: oxygen,
    ph,
    ammoniaMgL: ammonia,
    nitriteMgL: nitrite,
    conductivityUScm: conductivity,
    hardnessMgL: hardness,
    levelLitres: level,
  }),
});
