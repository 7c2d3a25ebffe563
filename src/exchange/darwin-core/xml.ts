// Text inside XML.

/** Marks that mean something in XML written as references; control characters that XML 1.0 has no place for left out. */
export function xmlText(text: string): string {
  return [...text]
    .filter(character => character >= ' ' || '\t\n\r'.includes(character))
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
