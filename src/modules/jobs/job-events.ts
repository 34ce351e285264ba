import type { Readable } from 'node:stream';
import { Injectable } from '@nestjs/common';
import type { Actor } from '../../platform/database/actor.js';
import { Drain } from '../../platform/http/drain.js';
import { Signals } from '../../platform/signals/signals.js';
import { Log } from '../../platform/telemetry/log.js';
import { Metrics } from '../../platform/telemetry/metrics.js';
import { EventStream } from './event-stream.js';
import { isOver, JobsService } from './jobs.service.js';

const HEARTBEAT_MS = 15_000;

/** The progress of a job as server-sent events: one at once, one after every change, the last when the run is over. */
@Injectable()
export class JobEvents {
  private streams = 0;

  constructor(
    private readonly jobs: JobsService,
    private readonly signals: Signals,
    private readonly drain: Drain,
    private readonly log: Log,
    metrics: Metrics,
  ) {
    metrics.gauge('wallcourse_event_streams', 'Event streams of jobs that are open', () => this.streams);
    metrics.gauge('wallcourse_signal_subscribers', 'Those who wait for a signal', () => signals.subscribers);
  }

  async open(actor: Actor, id: string): Promise<Readable> {
    await this.jobs.progress(actor, id);
    const stream = new EventStream();
    this.streams += 1;
    stream.onEnd(() => (this.streams -= 1));
    const tell = this.teller(actor, id, stream);
    const heartbeat = setInterval(() => stream.heartbeat(), HEARTBEAT_MS);
    stream.onEnd(() => clearInterval(heartbeat));
    stream.onEnd(this.signals.subscribe(actor.supplierId, 'job', id, tell));
    stream.onEnd(this.drain.track(() => stream.end()));
    tell();
    return stream.readable;
  }

  /** Reads anew after every signal, one reading at a time; a signal during a reading causes one more. */
  private teller(actor: Actor, id: string, stream: EventStream): () => void {
    let last = '';
    let reading = false;
    let again = false;
    const round = async () => {
      const { job, progress } = await this.jobs.progress(actor, id);
      const data = JSON.stringify(progress);
      if (data !== last) stream.event('progress', data);
      last = data;
      if (isOver(job)) stream.end();
    };
    const tell = () => {
      again = reading;
      if (reading || stream.ended) return;
      reading = true;
      void round()
        .catch((error: unknown) => {
          this.log.warn({ err: error, job: id }, 'an event stream ended early');
          stream.end();
        })
        .finally(() => {
          reading = false;
          if (again) tell();
        });
    };
    return tell;
  }
}
