import { Readable } from 'node:stream';

/** Server-sent events to one client. What was taken up for it is let go of once, whoever ends it: client, run or server. */
export class EventStream {
  readonly readable = new Readable({ read: () => undefined });
  private readonly undos: (() => void)[] = [];
  private over = false;

  constructor() {
    this.readable.once('close', () => this.letGo());
  }

  get ended(): boolean {
    return this.over || this.readable.destroyed;
  }

  event(name: string, data: string): void {
    if (!this.ended) this.readable.push(`event: ${name}\ndata: ${data}\n\n`);
  }

  /** A line that every client overlooks, so that nobody on the way thinks the connection idle. */
  heartbeat(): void {
    if (!this.ended) this.readable.push(': still here\n\n');
  }

  end(): void {
    if (!this.ended) this.readable.push(null);
    this.letGo();
  }

  onEnd(undo: () => void): void {
    if (this.ended) undo();
    else this.undos.push(undo);
  }

  private letGo(): void {
    this.over = true;
    for (const undo of this.undos.splice(0)) undo();
  }
}
