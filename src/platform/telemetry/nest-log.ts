import type { LoggerService } from '@nestjs/common';
import type { Log } from './log.js';

/** Lets the framework write into our log: its own chatter as debug, its warnings and errors as they are. */
export class NestLog implements LoggerService {
  constructor(private readonly log_: Log) {}

  log(message: unknown, context?: unknown): void {
    this.log_.debug({ context }, String(message));
  }

  debug(message: unknown, context?: unknown): void {
    this.log_.debug({ context }, String(message));
  }

  verbose(message: unknown, context?: unknown): void {
    this.log_.debug({ context }, String(message));
  }

  warn(message: unknown, context?: unknown): void {
    this.log_.warn({ context }, String(message));
  }

  error(message: unknown, ...rest: unknown[]): void {
    this.log_.error({ rest, ...(message instanceof Error ? { err: message } : {}) }, String(message));
  }

  fatal(message: unknown, ...rest: unknown[]): void {
    this.log_.fatal({ rest }, String(message));
  }
}
