// The screens as one Ink component: keys and the window's size go into the loop, its lines are painted.
import {useInput, useStdout} from 'ink';
import {useEffect, useSyncExternalStore} from 'react';
import {CLEARED} from './alternate-screen.ts';
import {windowLines} from './draw.ts';
import type {Loop} from './loop.ts';
import {Painted} from './paint.tsx';
import {strokesOf} from './strokes.ts';

export function Screens({loop}: {readonly loop: Loop}) {
  const app = useSyncExternalStore(loop.listen, loop.app);
  const {stdout} = useStdout();
  useInput((input, key) => {
    for (const stroke of strokesOf(input, key)) loop.send({is: 'stroke', stroke});
  });
  useEffect(() => {
    const resized = () => {
      // What was drawn for the old width would stay behind the new drawing.
      stdout.write(CLEARED);
      loop.send({is: 'size', columns: stdout.columns, rows: stdout.rows});
    };
    stdout.on('resize', resized);
    return () => {
      stdout.off('resize', resized);
    };
  }, [stdout, loop]);
  return <Painted lines={windowLines(app)} />;
}
