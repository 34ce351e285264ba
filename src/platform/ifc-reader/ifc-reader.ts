import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { PACKAGE_ROOT } from '../config/package-root.js';
import { Refusal } from '../refusals/refusal.js';
import { residentMemory } from './resident-memory.js';
import { checkStepFile, MAX_INSTANCES } from './step-file.js';

export interface IfcReaderOptions {
  /** Processes at once; more wait for their turn. */
  readonly processes: number;
  readonly memoryMb: number;
  readonly deadlineMs: number;
  readonly instances?: number;
}

/** Calls back when whoever asked has gone; answers how to stop listening. */
export type WhenGone = (told: () => void) => () => void;

const CHILD = join(PACKAGE_ROOT, 'dist', 'platform', 'ifc-reader', 'ifc-child.js');
const LOOK_EVERY_MS = 20;
const MEGABYTE = 1_048_576;
/** What is taken out of a model is smaller than the model; more than this is a trick. */
const MAX_OUTPUT = 128 * MEGABYTE;
const MOST_WAITING = 32;
const UNREADABLE = 3;

/** Opens building models, each in a process of its own whose memory and time are watched from here. */
export class IfcReader {
  private readonly children = new Set<ChildProcess>();
  private readonly waiting: (() => void)[] = [];
  private running = 0;
  private closed = false;

  constructor(private readonly options: IfcReaderOptions) {}

  /** Processes that are open now. */
  get open(): number {
    return this.children.size;
  }

  /**
   * What is taken out of a model: the text of a JSON object `StepLines`.
   *
   * @throws Refusal `unreadable` for a damaged or broken-off file, `too-large` past the instances, the memory or the time a model may
   *   take, `busy` where too many wait
   */
  async read(name: string, bytes: Uint8Array, whenGone: WhenGone = () => () => {}): Promise<Buffer> {
    checkStepFile(name, bytes, this.options.instances ?? MAX_INSTANCES);
    await this.turn();
    try {
      return await this.inChild(name, bytes, whenGone);
    } finally {
      this.running -= 1;
      this.waiting.shift()?.();
    }
  }

  /** Ends every process that is open; whoever waits for one is told. */
  async close(): Promise<void> {
    this.closed = true;
    const gone = [...this.children].map((child) => new Promise((settle) => child.once('close', settle)));
    for (const child of this.children) child.kill('SIGKILL');
    await Promise.all(gone);
  }

  private async turn(): Promise<void> {
    if (this.running >= this.options.processes) {
      if (this.waiting.length >= MOST_WAITING)
        throw new Refusal('busy', 'Too many models are waiting to be opened; try again shortly.');
      await new Promise<void>((settle) => this.waiting.push(settle));
    }
    this.running += 1;
  }

  private inChild(name: string, bytes: Uint8Array, whenGone: WhenGone): Promise<Buffer> {
    if (this.closed) throw new Refusal('busy', 'The server is stopping; try again shortly.');
    if (!existsSync(CHILD)) throw new Error('there is no compiled platform/ifc-reader/ifc-child.js');
    const { memoryMb, deadlineMs } = this.options;
    const child = spawn(process.execPath, [`--max-old-space-size=${memoryMb}`, CHILD, String(memoryMb)], {
      env: {},
      stdio: ['pipe', 'pipe', 'ignore', 'pipe'],
    });
    this.children.add(child);
    return new Promise<Buffer>((settle, fail) => {
      let ended: Refusal | null = null;
      const end = (refusal: Refusal): void => {
        ended ??= refusal;
        child.kill('SIGKILL');
      };
      const refused = (code: 'too-large' | 'unreadable', detail: string, fix: string): void =>
        end(new Refusal(code, detail, [{ sheet: name, row: null, column: null, pointer: null, read: '', fix }]));
      let reported = 0;
      const look = setInterval(() => {
        const held = child.pid === undefined ? 0 : (residentMemory(child.pid) ?? reported);
        if (held > memoryMb * MEGABYTE)
          refused(
            'too-large',
            `The model needs more than the ${memoryMb} MB it may need.`,
            'a smaller model: export the walls and storeys alone',
          );
      }, LOOK_EVERY_MS);
      const deadline = setTimeout(
        () =>
          refused(
            'too-large',
            `The model takes longer than the ${deadlineMs / 1_000} s it may take.`,
            'a smaller model: export the walls and storeys alone',
          ),
        deadlineMs,
      );
      const heard = whenGone(() => end(new Refusal('unreadable', 'The request ended before it was answered.')));
      const parts: Buffer[] = [];
      let size = 0;
      child.stdout?.on('data', (part: Buffer) => {
        size += part.length;
        if (size > MAX_OUTPUT)
          refused(
            'too-large',
            'The model holds more than is read at once.',
            'a smaller model: export the walls and storeys alone',
          );
        else parts.push(part);
      });
      (child.stdio[3] as Readable).on('data', (report: Buffer) => {
        reported = Number(report.toString().trim().split('\n').at(-1)) || reported;
      });
      (child.stdio[3] as Readable).on('error', () => {});
      child.stdin?.on('error', () => {});
      child.once('error', fail);
      child.once('close', (code) => {
        clearInterval(look);
        clearTimeout(deadline);
        heard();
        this.children.delete(child);
        if (ended) fail(ended);
        else if (this.closed) fail(new Refusal('busy', 'The server is stopping; try again shortly.'));
        else if (code === 0) settle(Buffer.concat(parts));
        else fail(damaged(name, code));
      });
      child.stdin?.end(bytes);
    });
  }
}

/** Content makes the parser stop in many ways; whichever it is, the file cannot be read. */
const damaged = (name: string, code: number | null): Refusal =>
  new Refusal('unreadable', 'The model is damaged, or no building model.', [
    {
      sheet: name,
      row: null,
      column: null,
      pointer: null,
      read: code === UNREADABLE ? '' : 'the parser stopped',
      fix: 'an IFC4 model as STEP text that opens elsewhere: export it again',
    },
  ]);
