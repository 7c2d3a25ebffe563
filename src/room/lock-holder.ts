// Who holds the lock of a room, and whether that process still lives.
import {createHash} from 'node:crypto';
import {readFile, readlink} from 'node:fs/promises';
import {hostname} from 'node:os';

export interface Holder {
  /** Another one for every holding. */
  readonly token: string;
  readonly by: string;
  readonly since: string;
  /** The machine: its name, and a fingerprint of what tells it from others of that name. */
  readonly host: string;
  /** The run of the machine since it was started; empty where the system does not tell. */
  readonly boot: string;
  /** Processes of another space (a container) cannot be asked for. Empty where the system has none. */
  readonly processes: string;
  readonly pid: number;
  /** When the process started, as the system counts; tells it from a later one of the same number. */
  readonly started: string;
}

/** Where a process runs, and which it is. */
export type Whereabouts = Omit<Holder, 'token' | 'by' | 'since'>;

export async function thisProcess(): Promise<Whereabouts> {
  const [machine, boot, processes, started] = await Promise.all([
    textOr('/etc/machine-id'),
    textOr('/proc/sys/kernel/random/boot_id'),
    readlink('/proc/self/ns/pid').catch(() => ''),
    startOf(process.pid),
  ]);
  const fingerprint = createHash('sha256').update(machine).digest('hex').slice(0, 8);
  return {host: `${hostname()} (${fingerprint})`, boot, processes, pid: process.pid, started};
}

/**
 * What is known of a holder from here: `gone` for certain, `running` for certain, `unknown` for another
 * machine's or container's process.
 */
export async function stateOf(
  holder: Whereabouts,
  here: Whereabouts,
): Promise<'running' | 'gone' | 'unknown'> {
  if (holder.host !== here.host) return 'unknown';
  if (holder.boot !== here.boot) return 'gone';
  if (holder.processes !== here.processes) return 'unknown';
  if (!exists(holder.pid)) return 'gone';
  return (await startOf(holder.pid)) === holder.started ? 'running' : 'gone';
}

/** The holder that a lock file names; undefined for a file that is not one of ours. */
export function holderIn(text: string): Holder | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return isHolder(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

function isHolder(value: unknown): value is Holder {
  if (typeof value !== 'object' || value === null) return false;
  const fields = new Map<string, unknown>(Object.entries(value));
  const texts = ['token', 'by', 'since', 'host', 'boot', 'processes', 'started'];
  return typeof fields.get('pid') === 'number' && texts.every(name => typeof fields.get(name) === 'string');
}

/** A process that belongs to somebody else exists although it may not be signalled. */
function exists(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Field 22 of /proc/PID/stat (proc_pid_stat(5)), counted after the name, which may hold blanks and brackets. */
async function startOf(pid: number): Promise<string> {
  const text = await textOr(`/proc/${pid}/stat`);
  return text.slice(text.lastIndexOf(')') + 2).split(' ')[19] ?? '';
}

async function textOr(path: string): Promise<string> {
  return (await readFile(path, 'utf8').catch(() => '')).trim();
}
