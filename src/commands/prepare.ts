import {recordCommand} from './recording.ts';

const fields = ({method, medium, store, killed, agent, note}: Readonly<Record<string, unknown>>) => ({
  record: 'preparation',
  method,
  medium,
  store,
  killedAt: killed,
  agent,
  note,
});

export const command = recordCommand({
  arguments: [['<specimen...>', 'the specimen, or several prepared alike']],
  options: command =>
    command
      .option(
        '--method <word>',
        'pinned, pointed, carded, spread, fluid, slide, papered, dried, frozen or other',
      )
      .option('--medium <text>', 'what it lies in: "ethanol 80 %"')
      .option('--store <text>', 'where it is kept: "cabinet 3, drawer 12"')
      .option('--killed <instant>', 'when it was killed')
      .option('--agent <text>', 'what it was killed with: freezer, ethyl acetate')
      .option('--note <text>'),
  examples: [
    'prepare 26-031-A-1 26-031-A-2 --method pinned --store "cabinet 3, drawer 12"',
    'prepare 26-031-A-p1 --method fluid --medium "ethanol 95 %" --killed "2026-06-12T09:00" --agent ethanol',
  ],
  record: ([specimen], options) => ({...fields(options), specimen}),
  also: ([, ...others], options) => others.map(specimen => ({...fields(options), specimen})),
});
