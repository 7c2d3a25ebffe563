import {InvalidArgumentError, Option} from 'commander';
import {labelKinds} from '../exchange/labels/label.ts';
import {type PaperName, papers} from '../exchange/pdf/paper.ts';
import {counted} from '../records/plain-words.ts';
import {type CardWishes, cardsWanted, pieceOf, printCards} from '../work/cards.ts';
import {openDesk} from '../work/desk.ts';
import {
  answerOf,
  type LabelsAnswer,
  type LabelWishes,
  labelsWanted,
  printLabels,
  stripsOf,
} from '../work/labels.ts';
import {type SheetWishes, textOf} from '../work/sheet-file.ts';
import {type Command, examples, type Invocation, listOption, type Options, textOption} from './command.ts';
import {collect, numberWord} from './words.ts';

export const command: Command = {
  declare(command) {
    command
      .option(
        '--out <file>',
        'a .pdf in true millimetres, or a .txt; without it they are shown and not remembered',
      )
      .option('--lot <code>', 'for the specimens of this lot; may be given several times', collect)
      .option(
        '--sample <code>',
        'for all that came of this field sample; may be given several times',
        collect,
      )
      .option('--specimen <code>', 'for this specimen; may be given several times', collect)
      .option('--again', 'also those that were printed before')
      .option('--only <kind>', `only ${labelKinds.join(', ')}; may be given several times`, collect)
      .option('--vials', 'for vials: one label with everything, in place of those for the pin')
      .option('--square', 'with a square code (QR) that holds the code')
      .option('--size <mm>', 'width and height of one, such as 18x8', sizeWord)
      .addOption(new Option('--paper <name>', 'the paper').choices(Object.keys(papers)).default('a4'))
      .option('--cards', 'cards for units, lots or field samples, in place of labels for specimens')
      .option(
        '--unit <code>',
        'the unit of a card; may be given several times (default: all in use)',
        collect,
      )
      .option('--copies <n>', 'so many of each card', numberWord);
    examples(
      command,
      'labels --lot 26-031-A',
      'labels --out labels.pdf --square',
      'labels --sample 26-031 --vials --out vials.pdf',
      'labels --cards --unit C1 --out card.pdf',
    );
  },
  async run(invocation, _, options) {
    const out = textOption(options, 'out');
    await (options.cards === true ? cards(invocation, options, out) : labels(invocation, options, out));
  },
};

async function labels(invocation: Invocation, options: Options, out: string | undefined): Promise<void> {
  const wishes = labelWishes(options);
  if (out !== undefined) {
    const answer = await printLabels(invocation, wishes, out);
    invocation.answer(answer, () => told(answer));
    return;
  }
  const batch = labelsWanted(await openDesk(invocation, 'all'), wishes);
  const answer = answerOf(batch, {file: null, pages: null, entries: []});
  invocation.answer({...answer, text: batch.labels}, () =>
    batch.labels.length === 0 ? told(answer) : textOf(stripsOf(batch.labels)),
  );
}

async function cards(invocation: Invocation, options: Options, out: string | undefined): Promise<void> {
  const wishes: CardWishes = {
    ...sheetWishes(options),
    units: listOption(options, 'unit'),
    lots: listOption(options, 'lot'),
    samples: listOption(options, 'sample'),
    copies: typeof options.copies === 'number' ? options.copies : undefined,
  };
  if (out !== undefined) {
    const answer = await printCards(invocation, wishes, out);
    const sheets = answer.pages === null ? '' : `, ${counted(answer.pages, 'sheet')}`;
    invocation.answer(answer, () => `${answer.file}: ${counted(answer.cards, 'card')}${sheets}`);
    return;
  }
  const wanted = cardsWanted(await openDesk(invocation, 'all'), wishes);
  invocation.answer({file: null, cards: wanted.length, pages: null, text: wanted}, () =>
    wanted.length === 0 ? 'nothing lives in the room now' : textOf(wanted.map(card => [pieceOf(card)])),
  );
}

function labelWishes(options: Options): LabelWishes {
  const only = listOption(options, 'only');
  const stranger = only.find(kind => !labelKinds.some(known => known === kind));
  if (stranger !== undefined)
    throw new InvalidArgumentError(`there is no label "${stranger}"; there are ${labelKinds.join(', ')}.`);
  return {
    ...sheetWishes(options),
    lots: listOption(options, 'lot'),
    samples: listOption(options, 'sample'),
    specimens: listOption(options, 'specimen'),
    kinds: only.length === 0 ? undefined : labelKinds.filter(kind => only.includes(kind)),
    vials: options.vials === true,
    again: options.again === true,
  };
}

function sheetWishes(options: Options): SheetWishes {
  return {
    square: options.square === true,
    size: isSize(options.size) ? options.size : undefined,
    paper: paperNames.find(name => name === options.paper),
  };
}

const paperNames: readonly PaperName[] = ['a4', 'letter'];

type Size = NonNullable<SheetWishes['size']>;

/** "18x8": width, then height. */
function sizeWord(word: string): Size {
  const [, widthMm, heightMm] = /^([\d.]+)\s*[x×]\s*([\d.]+)$/i.exec(word) ?? [];
  const size = {widthMm: Number(widthMm), heightMm: Number(heightMm)};
  if (!(size.widthMm > 0 && size.heightMm > 0))
    throw new InvalidArgumentError(`"${word}" is not written widthxheight in millimetres, such as 18x8.`);
  return size;
}

function isSize(value: unknown): value is Size {
  return typeof value === 'object' && value !== null && 'widthMm' in value && 'heightMm' in value;
}

function told(answer: LabelsAnswer): string {
  const {file, labels, specimens, kinds, passedOver, changed, pages} = answer;
  const before =
    passedOver === 0 ? [] : [`${counted(passedOver, 'label')} printed before; --again prints them too`];
  if (labels === 0) return ['nothing to label', ...before].join('; ');
  const each = Object.entries(kinds).map(([kind, count]) => `${count} ${kind}`);
  return [
    `${file}: ${counted(labels, 'label')} for ${counted(specimens, 'specimen')} (${each.join(', ')})${pages === null ? '' : `, ${counted(pages, 'sheet')}`}`,
    ...before,
    ...(changed === 0
      ? []
      : [`${counted(changed, 'label')} with another text than printed before: take the old off`]),
    ...(pages === null
      ? []
      : ['print at 100 %; the line of 50 mm below each sheet shows whether the size was kept']),
    ...((kinds.vial ?? kinds.exuviae) !== undefined && pages !== null
      ? ['toner can come off in alcohol: try this printer and paper in your fluid first']
      : []),
  ].join('\n  ');
}
