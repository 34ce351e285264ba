import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { inches, toMm } from '../../src/domain/quantity/length.js';
import { measure, type Measurement } from '../../src/domain/pipeline.js';
import { readScheduleDocument } from '../../src/domain/schedule/index.js';
import { cubicMetres } from '../../src/domain/takeoff/index.js';
import { heron } from '../support/small-schedules.js';

/**
 * Whole jobs kept as files whose differences read as a story. Their take-offs are held against the slow oracle in
 * `test/domain/takeoff/*.property.test.ts`; these files only tell when a number moves. A number that moves asks for a new ENGINE.
 *
 * `REGEN=1 npm test -- test/golden` writes them anew, never under CI.
 */
const JOBS = ['harbour-store', 'mill-lane-house', 'quay-workshop'];
const folder = (job: string): URL => new URL(`./${job}/`, import.meta.url);
const read = (url: URL): unknown => JSON.parse(readFileSync(url, 'utf8'));

function measured(job: string): Measurement {
  const range = heron();
  const contexts = { range: range.code, cores: [...range.cores.keys()], courseHeight: range.courseHeight, buckThickness: inches(1.5) };
  const schedule = readScheduleDocument(read(new URL(`../../shared/samples/${job}.schedule.json`, import.meta.url)), contexts);
  if (!schedule.ok) throw new Error(JSON.stringify(schedule.error));
  return measure(schedule.value, range);
}

function told(job: string): Record<string, unknown> {
  const { engine, takeoff, materials, findings, questions, checks } = measured(job);
  return {
    takeoff: {
      engine,
      units: takeoff.units.map(({ because: _because, ...unit }) => unit),
      walls: takeoff.laid.storeys.flatMap((storey) =>
        storey.walls.map((wall) => ({
          mark: wall.mark,
          lengthMm: toMm(wall.length),
          courses: wall.stack.courses,
          strips: wall.stack.strips,
          concreteM3: cubicMetres(wall.concreteNm3),
          course1: wall.courses[0]!.pieces.map((piece) => `${piece.sku} ${toMm(piece.from)}..${toMm(piece.to)}`),
          course2: wall.courses[1]?.pieces.map((piece) => `${piece.sku} ${toMm(piece.from)}..${toMm(piece.to)}`) ?? [],
        })),
      ),
      orderYd3: takeoff.concrete.map(({ storey, orderYd3 }) => ({ storey, orderYd3 })),
      bondBreaks: takeoff.bondBreaks.length,
    },
    materials: materials.map(({ sku, quantity, unit }) => ({ sku, quantity, unit })),
    findings: findings.map(({ code, severity, storey, walls, numbers }) => ({ code, severity, storey, walls, numbers })),
    questions: questions.map(({ key, severity }) => ({ key, severity })),
    checks: checks.map(({ check, storey, core, results }) => ({ check, storey, core, results })),
  };
}

describe.each(JOBS)('golden job %s', (job) => {
  const now = JSON.parse(JSON.stringify(told(job))) as Record<string, unknown>;
  if (process.env['REGEN'] === '1') {
    if (process.env['CI']) throw new Error('golden files are never written under CI');
    mkdirSync(folder(job), { recursive: true });
    for (const [name, value] of Object.entries(now)) writeFileSync(new URL(`${name}.json`, folder(job)), `${JSON.stringify(value, null, 1)}\n`);
  }

  it.each(Object.keys(now))('%s', (name) => {
    const file = new URL(`${name}.json`, folder(job));
    expect(existsSync(file)).toBe(true);
    expect(now[name]).toEqual(read(file));
  });
});
