// Lines painted with Ink: weight and colour repeat what words and shapes say.
import {Box, Text, type TextProps} from 'ink';
import type {Kind, Line} from '../exchange/pictures/line.ts';

const LOOKS: Readonly<Record<Kind, TextProps>> = {
  plain: {},
  heading: {bold: true},
  seen: {bold: true},
  expected: {dimColor: true},
  emergence: {color: 'green'},
  mark: {dimColor: true},
  late: {color: 'red', bold: true},
  good: {color: 'green'},
  cursor: {bold: true, color: 'cyan'},
};

export function Painted({lines}: {readonly lines: readonly Line[]}) {
  return (
    <Box flexDirection="column">
      {lines.map((line, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row of the window is its place
        <PaintedLine key={row} line={line} />
      ))}
    </Box>
  );
}

function PaintedLine({line}: {readonly line: Line}) {
  return (
    <Text wrap="truncate-end">
      {line.length === 0 ? ' ' : null}
      {line.map(({text, kind}, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a piece of a line is its place
        <Text key={i} {...LOOKS[kind]}>
          {text}
        </Text>
      ))}
    </Text>
  );
}
