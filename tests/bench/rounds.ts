// Times several pieces of work in turn, so that a busy minute strikes all of them alike.

export interface Timing {
  /** Of the first round, in which nothing is warm. */
  readonly firstMs: number;
  /** Of the rounds after it. */
  readonly medianMs: number;
}

/** Milliseconds that this process has worked, whatever else ran beside it. */
export function processorMs(): number {
  const {user, system} = process.cpuUsage();
  return (user + system) / 1000;
}

/** @param clock in milliseconds */
export function interleaved<Name extends string>(
  work: Readonly<Record<Name, () => void>>,
  rounds: number,
  clock: () => number = () => performance.now(),
): Record<Name, Timing> {
  const names = Object.keys(work) as Name[];
  const times = new Map<Name, number[]>(names.map(name => [name, []]));
  for (let round = 0; round <= rounds; round++)
    for (const name of names) {
      const start = clock();
      work[name]();
      times.get(name)!.push(clock() - start);
    }
  const timings = names.map(name => {
    const [firstMs = 0, ...rest] = times.get(name)!;
    const sorted = rest.sort((a, b) => a - b);
    return [name, {firstMs, medianMs: sorted[Math.floor(sorted.length / 2)]!}] as const;
  });
  return Object.fromEntries(timings) as Record<Name, Timing>;
}
