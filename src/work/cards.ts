// Cards for units, lots and field samples, printed to a file.
import {type Card, lotCard, sampleCard, unitCard} from '../exchange/labels/cards.ts';
import {cardForm} from '../exchange/labels/form.ts';
import type {Piece} from '../exchange/labels/label-pdf.ts';
import {writeOutput} from '../exchange/output-file.ts';
import {openLots} from '../records/state.ts';
import {type Desk, openDesk} from './desk.ts';
import {assertKnown} from './known-codes.ts';
import type {Session} from './session.ts';
import {type SheetWishes, sheetFile, sizedForm} from './sheet-file.ts';

/** Nothing named: of every unit that something lives in. */
export interface CardWishes extends SheetWishes {
  readonly units?: readonly string[];
  readonly lots?: readonly string[];
  readonly samples?: readonly string[];
  /** Of each card; a field sample needs one for every container. Default: 1. */
  readonly copies?: number | undefined;
}

/** As `teneral labels --cards` answers. */
export interface CardsAnswer {
  readonly file: string;
  readonly cards: number;
  readonly pages: number | null;
}

/** @throws Refusal for a code that the room does not hold */
export function cardsWanted({state, civil}: Desk, wishes: CardWishes): Card[] {
  const {lots = [], samples = [], copies = 1} = wishes;
  assertKnown(wishes.units, state.units, 'unit');
  assertKnown(lots, state.lots, 'lot');
  assertKnown(samples, state.samples, 'field sample');
  const named = (wishes.units?.length ?? 0) + lots.length + samples.length > 0;
  const livedIn = new Set(openLots(state).map(({stays}) => stays.at(-1)?.unit));
  const occupied = [...state.units.keys()].filter(unit => livedIn.has(unit));
  const cards = [
    ...(named ? (wishes.units ?? []) : occupied).map(code => unitCard(code, state, civil)),
    ...lots.map(code => lotCard(code, state, civil)),
    ...samples.map(code => sampleCard(code, state)),
  ];
  return cards.flatMap(card => Array<Card>(copies).fill(card));
}

/** @throws Refusal where a code is unknown, a card does not hold its text, or the file cannot be written */
export async function printCards(session: Session, wishes: CardWishes, file: string): Promise<CardsAnswer> {
  const desk = await openDesk(session, 'all');
  const pieces = cardsWanted(desk, wishes).map(card => pieceOf(card, wishes.square));
  const section = {form: sizedForm(cardForm, wishes), strips: pieces.map(piece => [piece])};
  const {content, pages} = await sheetFile(file, [section], wishes, desk);
  await writeOutput([{path: file, content}], async () => {});
  return {file, cards: pieces.length, pages};
}

export function pieceOf({code, lines}: Card, square = false): Piece {
  return {
    what: `the card of ${code}`,
    heading: code,
    lines,
    square: square ? code : undefined,
  };
}
