// A room.json that this program did not write as it stands: edited by hand, damaged, or of another version.
// Loaded only then, because zod takes its time.
import {Refusal} from '../records/refusal.ts';
import {refusalFor} from '../records/schema/wording.ts';
import {numberIn} from './numbering.ts';
import type {RoomDocument, StoredRoom} from './room-document.ts';

import {roomDocument} from './room-schema.ts';
import {FORMAT, sha256} from './sealed.ts';

const WAY_BACK = 'Run teneral restore to go back to the newest sound copy.';

/**
 * A room edited by hand is served with a warning where its form is right.
 * @throws Refusal for a damaged one, saying where, and for one that a newer program wrote
 */
export function checkRoom(bytes: Buffer, path: string): StoredRoom {
  const {format, sha256: stated, content} = sealedParts(bytes, path);
  if (typeof format === 'number' && format > FORMAT)
    throw new Refusal(
      `the room has format ${format}, newer than this teneral knows (${FORMAT})`,
      path,
      'Install the newer teneral.',
    );
  const result = roomDocument.safeParse(content);
  if (!result.success) {
    const {what, where, mend} = refusalFor(result.error, content, path);
    throw new Refusal(`the room is damaged: ${what} (${withoutStop(mend)})`, where, WAY_BACK);
  }
  const document = result.data;
  const fault = contradictionIn(document);
  if (fault !== undefined) throw new Refusal(`the room is damaged: ${fault}`, path, WAY_BACK);
  const revision = sha256(JSON.stringify(content));
  // Laid out anew by an editor, but nothing else: the content is as it was written.
  if (revision === stated) return {document, revision, warnings: []};
  const warning = `${path} is not as it was written: somebody edited it, or the disk did. Its form is right, so it is used as it stands.`;
  return {document, revision, warnings: [warning]};
}

function sealedParts(bytes: Buffer, path: string): {format: unknown; sha256: unknown; content: unknown} {
  if (bytes.length === 0) throw new Refusal('the room is damaged: the file is empty', path, WAY_BACK);
  const parsed = parse(textOf(bytes, path), path);
  if (typeof parsed !== 'object' || parsed === null || !('format' in parsed) || !('content' in parsed))
    throw new Refusal('the room is damaged: this is JSON, but no room', path, WAY_BACK);
  return {sha256: undefined, ...parsed};
}

function textOf(bytes: Buffer, path: string): string {
  try {
    return new TextDecoder('utf-8', {fatal: true}).decode(bytes);
  } catch {
    throw new Refusal('the room is damaged: this is no text', path, WAY_BACK);
  }
}

function parse(text: string, path: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const complaint = error instanceof Error ? error.message.replaceAll('\n', ' ') : '';
    throw new Refusal(`the room is damaged: the file is cut or altered (${complaint})`, path, WAY_BACK);
  }
}

export function withoutStop(sentence: string): string {
  return sentence.replace(/\.$/, '');
}

/** What the form alone does not show: ids used twice, or a numbering that would use one again. */
export function contradictionIn({entries, imports, documents, next}: RoomDocument): string | undefined {
  let newest = 0;
  for (const {id} of entries) {
    if (numberIn(id) <= newest) return `entry ${id} stands out of order or twice`;
    newest = numberIn(id);
  }
  if (newest >= next.entry)
    return `the next entry is numbered e${next.entry}, but there is an entry e${newest}`;
  if (entries.some(({request}) => numberIn(request) >= next.request))
    return `the next request is numbered r${next.request}, but an entry says more`;
  if (imports.some(({id}) => numberIn(id) >= next.batch))
    return `the next import is numbered i${next.batch}, but there is one that says more`;
  const paths = new Set(documents.map(({path}) => path));
  if (paths.size < documents.length) return 'a document stands in the table twice';
  return undefined;
}
