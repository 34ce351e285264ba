import { describe, expect, it } from '@jest/globals';
import { stopAsked } from '../../../src/platform/process/stop-asked.js';

describe('what asks a process to stop', () => {
  it('is a signal', async () => {
    const asked = stopAsked({});
    process.emit('SIGHUP');
    expect(await asked).toBe('SIGHUP');
  });

  it('is, under npm, the end of the shell that it was started by', async () => {
    const real = Object.getOwnPropertyDescriptor(process, 'ppid')!;
    let parent = 4_711;
    Object.defineProperty(process, 'ppid', { configurable: true, get: () => parent });
    try {
      const elsewhere = stopAsked({});
      const underNpm = stopAsked({ npm_lifecycle_event: 'start' });
      parent = 1;
      expect(await underNpm).toBe('end of npm');
      expect(await Promise.race([elsewhere, Promise.resolve('nothing')])).toBe('nothing');
    } finally {
      Object.defineProperty(process, 'ppid', real);
      process.emit('SIGHUP');
    }
  });
});
