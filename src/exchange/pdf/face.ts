// The face that printed sheets are set in, embedded in the file so that every printer shows the same.
// DejaVu Sans Condensed: narrow, legible when small, with Latin and its diacritics, Greek, Cyrillic, ♀ and ♂. Free to
// embed under the Bitstream Vera licence, its own changes being in the public domain (LICENSE of dejavu-fonts-ttf).
import {readFile} from 'node:fs/promises';
import {createRequire} from 'node:module';

export type Weight = 'regular' | 'bold' | 'italic';

const files: Readonly<Record<Weight, string>> = {
  regular: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
  italic: 'DejaVuSansCondensed-Oblique.ttf',
};

/** The bytes of a TrueType file. */
export function faceBytes(weight: Weight): Promise<Uint8Array> {
  const {resolve} = createRequire(import.meta.url);
  return readFile(resolve(`dejavu-fonts-ttf/ttf/${files[weight]}`));
}
