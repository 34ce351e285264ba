import { readFileSync } from 'node:fs';

/** Memory that a process holds [bytes], as Linux tells it; null on other systems and for a process that is gone. */
export function residentMemory(pid: number): number | null {
  try {
    const kilobytes = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return kilobytes === undefined ? null : Number(kilobytes) * 1_024;
  } catch {
    return null;
  }
}
