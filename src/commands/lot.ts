import {type Options, textOption} from './command.ts';
import {declareNeeds, needsGiven} from './needs-options.ts';
import {recordCommand} from './recording.ts';
import {candidateWords, collect, numberWord, stageWords} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<code>', 'the lot’s code'],
    ['<unit>', 'the unit it lives in'],
    ['[stage=n...]', 'animals by stage, such as larva-4=18 larva-5=6'],
  ],
  lodges: true,
  options: command =>
    declareNeeds(
      command
        .option('--sample <code>', 'the field sample it comes from')
        .option('--from-lot <code>', 'eggs laid here by a female of this lot, in place of --sample')
        .option('--from-specimen <code>', 'eggs laid here by this female, in place of --sample')
        .option('--taxon <text>', 'its name as known now')
        .option('--candidate <profile=weight>', 'what it may be; may be given several times', collect)
        .option('--material <what=amount>', 'galls, wood, litter, fruit whose animals are hidden: galls=40')
        .option('--material-unit <text>', 'what the material is counted in', 'pieces')
        .option('--progress <from-to>', 'how far through their stage they are, such as 0-0.2')
        .option('--one-brood', 'one clutch or nest: all of one age')
        .option('--estimated', 'the numbers are estimates')
        .option('--within <n>', 'estimates that may be off by so many, either way', numberWord)
        .option('--found-alive', 'seen alive although the trap held water')
        .option('--note <text>'),
    ),
  examples: [
    'lot 26-031-A C3 larva-4=18 larva-5=6 --sample 26-031 --candidate pieris-rapae=0.7 --candidate lepidoptera=0.3',
    'lot 26-041-A T2 nymph=12 --sample 26-041 --candidate plecoptera --warmest 12 --litres-each 0.5',
    'lot 26-018-A E4 --sample 26-018 --material galls=40',
    'lot 26-050-A T1 egg=200 --sample 26-050 --within 30',
  ],
  record: ([code, unit, ...counts], options) => ({
    record: 'lot',
    code,
    unit,
    sample: options.sample,
    from: origin(options),
    taxon: options.taxon,
    stages: counts.length === 0 ? undefined : stageWords(counts),
    material: material(options),
    progress: textOption(options, 'progress')?.split('-').map(numberWord),
    ages: options.oneBrood === true ? 'one-brood' : undefined,
    counted: options.estimated === true || options.within !== undefined ? 'estimated' : undefined,
    within: options.within,
    candidates: Array.isArray(options.candidate) ? candidateWords(options.candidate) : undefined,
    needs: needsGiven(options),
    foundAlive: options.foundAlive,
    note: options.note,
  }),
});

function origin(options: Options): unknown {
  if (options.fromLot !== undefined) return {lot: options.fromLot};
  if (options.fromSpecimen !== undefined) return {specimen: options.fromSpecimen};
  return undefined;
}

function material(options: Options): unknown {
  const [what, amount = '1'] = textOption(options, 'material')?.split('=') ?? [];
  return what === undefined ? undefined : {what, amount: numberWord(amount), unit: options.materialUnit};
}
