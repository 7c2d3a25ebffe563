// Every entry of the daybook as one plain sentence, without its date and without who wrote it.
import {careSentence} from './daybook-care.ts';
import {lifeSentence} from './daybook-life.ts';
import {roomSentence} from './daybook-room.ts';
import type {RoomRecord} from './schema/index.ts';

export {partWords} from './daybook-life.ts';

/** Such as "9 pupae and 3 larvae of the fifth instar counted". Codes stand as they are; no full stop. */
export function sentenceOf(record: RoomRecord): string {
  const sentence = lifeSentence(record) ?? careSentence(record) ?? roomSentence(record);
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
