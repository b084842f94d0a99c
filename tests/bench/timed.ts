/** Runs a process and measures it from outside, its start included. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

export interface Timed {
  readonly ms: number;
  /** Most memory it held, bytes; null where the system does not tell. */
  readonly memory: number | null;
  /** The end of what it printed. */
  readonly stdout: string;
}

/** Characters. */
const KEPT = 2_000;

/** What is printed is read as fast as it comes; only its end is kept. */
export function timed(command: string, args: readonly string[]): Promise<Timed> {
  return new Promise((done, failed) => {
    const start = performance.now();
    const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'inherit'] });
    let end = '';
    let memory: number | null = null;
    // The system keeps the peak, so the last look before the end is as good as any.
    const look = setInterval(() => {
      memory = peakOf(child.pid) ?? memory;
    }, 20);
    child.stdout.setEncoding('utf8').on('data', (part: string) => {
      end = (end + part).slice(-KEPT);
    });
    child.on('error', failed);
    child.on('close', () => {
      clearInterval(look);
      done({ ms: performance.now() - start, memory, stdout: end });
    });
  });
}

function peakOf(pid: number | undefined): number | null {
  try {
    const found = /^VmHWM:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
    return found ? Number(found[1]) * 1024 : null;
  } catch {
    return null;
  }
}
