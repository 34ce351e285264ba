import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { StepLines } from '../../../src/domain/schedule/ifc/step-model.js';
import { IfcReader, type IfcReaderOptions } from '../../../src/platform/ifc-reader/ifc-reader.js';
import { residentMemory } from '../../../src/platform/ifc-reader/resident-memory.js';
import { createDatabase } from '../../support/database.js';
import { freeWall } from '../../support/ifc-files.js';
import { ensureBuilt } from '../../support/server.js';

const SMALL = Buffer.from(freeWall('mm').toString());
/** A project and very many points that nothing names. */
const many = (points: number): Buffer =>
  Buffer.from(SMALL.toString().replace('ENDSEC;\nEND-ISO', () => `${Array.from({ length: points }, (_, index) => `#${1_000 + index}=IFCCARTESIANPOINT((${index}.5,0.25,1.125));`).join('\n')}\nENDSEC;\nEND-ISO`));

/** Processes whose parent is this one and that run the child's program, zombies too, as Linux lists them. */
function childrenLeft(): number {
  if (!existsSync('/proc/self/stat')) return 0;
  return readdirSync('/proc').filter((name) => {
    if (!/^\d+$/.test(name)) return false;
    try {
      const stat = readFileSync(`/proc/${name}/stat`, 'utf8');
      const parent = Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]);
      const command = readFileSync(`/proc/${name}/cmdline`, 'utf8');
      return parent === process.pid && (command.includes('ifc-child') || command === '');
    } catch {
      return false;
    }
  }).length;
}

describe('IfcReader', () => {
  let reader: IfcReader;
  const open = (options: Partial<IfcReaderOptions> = {}): IfcReader => (reader = new IfcReader({ processes: 2, memoryMb: 1_024, deadlineMs: 60_000, ...options }));
  beforeAll(async () => ensureBuilt((await createDatabase(false)).url), 120_000);
  afterEach(async () => {
    await reader.close();
    expect(reader.open).toBe(0);
    expect(childrenLeft()).toBe(0);
  });

  it('takes out of a model what walls hang together with', async () => {
    const lines = JSON.parse((await open().read('a.ifc', SMALL)).toString()) as StepLines;
    expect(lines.schema).toBe('IFC4');
    expect(lines.lines.filter(([, type]) => type === 'IfcWall')).toHaveLength(1);
    expect(lines.lines.find(([, type]) => type === 'IfcRectangleProfileDef')?.[2]).toEqual([{ word: 'AREA' }, null, { ref: expect.any(Number) }, 6096, 279.4]);
    expect(reader.open).toBe(0);
  });

  it('opens one file a process, more in turn', async () => {
    open({ processes: 1 });
    const read = Promise.all([reader.read('a.ifc', SMALL), reader.read('b.ifc', SMALL), reader.read('c.ifc', SMALL)]);
    let most = 0;
    const look = setInterval(() => (most = Math.max(most, reader.open)), 5);
    expect((await read).map((bytes) => bytes.length > 0)).toEqual([true, true, true]);
    clearInterval(look);
    expect(most).toBe(1);
  });

  it('ends a process that needs more memory than it may, and works on', async () => {
    open({ memoryMb: 170 });
    await expect(reader.read('big.ifc', many(600_000))).rejects.toMatchObject({ code: 'too-large', detail: 'The model needs more than the 170 MB it may need.', errors: [{ sheet: 'big.ifc' }] });
    expect((await reader.read('a.ifc', SMALL)).length).toBeGreaterThan(0);
  });

  it('ends a process that takes longer than it may', async () => {
    const began = performance.now();
    await expect(open({ deadlineMs: 50 }).read('slow.ifc', many(300_000))).rejects.toMatchObject({ code: 'too-large', detail: 'The model takes longer than the 0.05 s it may take.' });
    expect(performance.now() - began).toBeLessThan(5_000);
  });

  it('ends the process of whoever has gone', async () => {
    let told: () => void = () => {};
    let listening = false;
    const reading = open().read('a.ifc', many(300_000), (gone) => {
      told = gone;
      listening = true;
      return () => (listening = false);
    });
    const refusal = reading.catch((error: unknown) => error);
    await sleep(100);
    expect(reader.open).toBe(1);
    told();
    expect(await refusal).toMatchObject({ code: 'unreadable', detail: 'The request ended before it was answered.' });
    expect([reader.open, listening]).toEqual([0, false]);
  });

  it('ends the processes that are open when it closes', async () => {
    const refusal = open().read('a.ifc', many(300_000)).catch((error: unknown) => error);
    await sleep(100);
    await reader.close();
    expect(await refusal).toMatchObject({ code: 'busy' });
    await expect(reader.read('a.ifc', SMALL)).rejects.toMatchObject({ code: 'busy' });
  });

  it.each([
    ['broken in the middle', SMALL.toString().replace('=IFCRECTANGLEPROFILEDEF(', '=IFCNOSUCHTHING(((').replace('IFCWALL(', '(((')],
    ['without a schema', SMALL.toString().replace("FILE_SCHEMA(('IFC4'));", '')],
    ['of a schema that is none', SMALL.toString().replace("('IFC4')", "('AP214')")],
    ['of nothing but its ends', 'ISO-10303-21;\nEND-ISO-10303-21;\n'],
    ['with brackets in brackets without end', SMALL.toString().replace("'A',", `${'('.repeat(500_000)},`)],
  ])('refuses a file %s, or gives what is left of it, and never stops for it', async (_, step) => {
    const read = await open().read('bad.ifc', Buffer.from(step)).then((bytes) => JSON.parse(bytes.toString()) as StepLines, (error: unknown) => error);
    expect(read).toEqual(read instanceof Error ? expect.objectContaining({ code: 'unreadable', status: 400 }) : expect.objectContaining({ lines: expect.any(Array) }));
  });
});

it('tells the memory of this process as the process does, and nothing of one that is gone', () => {
  if (!existsSync('/proc/self/status')) return;
  const ratio = (residentMemory(process.pid) ?? 0) / process.memoryUsage.rss();
  expect(ratio).toBeGreaterThan(0.8);
  expect(ratio).toBeLessThan(1.25);
  expect(residentMemory(2 ** 30)).toBeNull();
});
