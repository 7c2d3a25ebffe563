// Without a command: the screens where there is a terminal, else the care list as text.

import type {Invocation} from './command.ts';
import {command as today} from './today.ts';

export async function openScreens(invocation: Invocation): Promise<void> {
  if (!process.stdin.isTTY || !process.stdout.isTTY || invocation.json) {
    await today.run(invocation, [], {});
    return;
  }
  // chalk, which Ink colours with, does not know NO_COLOR.
  if (process.env.NO_COLOR) process.env.FORCE_COLOR = '0';
  // biome-ignore lint/style/noRestrictedImports: the one door from the command line to the screens, opened lazily
  const {openOnTerminal} = await import('../terminal/open.tsx');
  await openOnTerminal(invocation);
}
