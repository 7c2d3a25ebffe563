// meta.xml: what the tables of an archive are, column by column. Darwin Core text guide of 2023-09-13: one core, any
// number of extensions that point at it, columns counted from 0.
import {iriOf, type Table} from './terms.ts';
import {xmlText} from './xml.ts';

/** @param core the table that the extensions point at with their first column */
export function metaXml(core: Table, extensions: readonly Table[]): string {
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<archive xmlns="http://rs.tdwg.org/dwc/text/" metadata="eml.xml">',
    ...tableXml('core', 'id', core),
    ...extensions.flatMap(table => tableXml('extension', 'coreid', table)),
    '</archive>',
    '',
  ].join('\n');
}

/** Everything is written out, also what the guide would take for granted. */
function tableXml(element: string, identifier: string, {file, rowType, terms}: Table): string[] {
  const form =
    'encoding="UTF-8" fieldsTerminatedBy="," linesTerminatedBy="\\r\\n" fieldsEnclosedBy="&quot;" ignoreHeaderLines="1"';
  return [
    `  <${element} rowType="${iriOf(rowType)}" ${form}>`,
    `    <files><location>${xmlText(file)}</location></files>`,
    `    <${identifier} index="0"/>`,
    ...terms.map((term, index) => `    <field index="${index}" term="${iriOf(term)}"/>`),
    `  </${element}>`,
  ];
}
