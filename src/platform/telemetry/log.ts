import { pino } from 'pino';
import { correlationId } from './correlation.js';

type Write = (facts: object, message?: string) => void;

/** Where the program writes what happened: one JSON line each, with the correlation id of the request or task. */
export abstract class Log {
  abstract fatal: Write;
  abstract error: Write;
  abstract warn: Write;
  abstract info: Write;
  abstract debug: Write;
}

export function openLog(level: string): Log {
  return pino({
    level,
    base: undefined,
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label) => ({ level: label }) },
    redact: ['headers.authorization', 'token'],
    mixin: () => {
      const correlation = correlationId();
      return correlation === null ? {} : { correlation };
    },
  });
}

export const silentLog = (): Log => openLog('silent');
