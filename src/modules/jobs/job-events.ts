import { Readable } from 'node:stream';
import { Injectable } from '@nestjs/common';
import type { Actor } from '../../platform/database/actor.js';
import { Drain } from '../../platform/http/drain.js';
import { Signals } from '../../platform/signals/signals.js';
import { Log } from '../../platform/telemetry/log.js';
import { isOver, JobsService } from './jobs.service.js';

const HEARTBEAT_MS = 15_000;

/** The progress of a job as server-sent events: one at once, one after every change, the last when the run is over. */
@Injectable()
export class JobEvents {
  constructor(
    private readonly jobs: JobsService,
    private readonly signals: Signals,
    private readonly drain: Drain,
    private readonly log: Log,
  ) {}

  async open(actor: Actor, id: string): Promise<Readable> {
    await this.jobs.progress(actor, id);
    const stream = new Readable({ read: () => undefined });
    const end = () => {
      if (!stream.destroyed && !stream.readableEnded) stream.push(null);
      release();
    };
    const tell = this.teller(actor, id, stream, end);
    const heartbeat = setInterval(() => stream.push(': still here\n\n'), HEARTBEAT_MS);
    const leave = this.signals.subscribe(actor.supplierId, 'job', id, tell);
    const untrack = this.drain.track(end);
    let released = false;
    const release = () => {
      if (released) return;
      released = true;
      clearInterval(heartbeat);
      leave();
      untrack();
    };
    stream.once('close', release);
    tell();
    return stream;
  }

  /** Reads anew after every signal, one reading at a time; a signal during a reading causes one more. */
  private teller(actor: Actor, id: string, stream: Readable, end: () => void): () => void {
    let last = '';
    let reading = false;
    let again = false;
    const round = async () => {
      const { job, progress } = await this.jobs.progress(actor, id);
      const data = JSON.stringify(progress);
      if (data !== last && !stream.destroyed) stream.push(`event: progress\ndata: ${data}\n\n`);
      last = data;
      if (isOver(job)) end();
    };
    const tell = () => {
      again = reading;
      if (reading || stream.destroyed) return;
      reading = true;
      round()
        .catch((error: unknown) => {
          this.log.warn({ err: error, job: id }, 'an event stream ended early');
          end();
        })
        .finally(() => {
          reading = false;
          if (again) tell();
        });
    };
    return tell;
  }
}
