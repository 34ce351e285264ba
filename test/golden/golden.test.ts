import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { inches, toMm } from '../../src/domain/quantity/length.js';
import { measure, type Measurement } from '../../src/domain/pipeline.js';
import { readScheduleDocument } from '../../src/domain/schedule/index.js';
import type { LaidWall } from '../../src/domain/takeoff/laid.js';
import { cubicMetres } from '../../src/domain/takeoff/index.js';
import { heron } from '../support/small-schedules.js';

/**
 * Whole jobs kept as files whose differences read as a story. Their take-offs are held against the slow oracle in
 * `test/domain/takeoff/*.property.test.ts`; these files only tell when a number moves. A number that moves asks for a new ENGINE.
 *
 * `REGEN=1 npm test -- test/golden` writes them anew, never under CI.
 */
const JOBS = ['harbour-store', 'mill-lane-house', 'quay-workshop', 'lantern-hall'];
const folder = (job: string): URL => new URL(`./${job}/`, import.meta.url);
const read = (url: URL): unknown => JSON.parse(readFileSync(url, 'utf8'));

function measured(job: string): Measurement {
  const range = heron();
  const contexts = { range: range.code, cores: [...range.cores.keys()], courseHeight: range.courseHeight, buckThickness: inches(1.5),
    coreWidths: new Map([...range.cores.values()].map(({ code, width }) => [code, width])), panel: range.panel };
  const schedule = readScheduleDocument(read(new URL(`../../shared/samples/${job}.schedule.json`, import.meta.url)), contexts);
  if (!schedule.ok) throw new Error(JSON.stringify(schedule.error));
  return measure(schedule.value, range);
}

/** Only where a wall has any, so that the files of plain jobs stay as they are. */
function featuresOf({ arc, gable, ledges, taper, coreChanges }: LaidWall): Record<string, unknown> {
  return {
    ...(arc ? { chords: arc.chords, chordMm: toMm(arc.chord ?? 0), lastChordMm: toMm(arc.lastChord ?? 0) } : {}),
    ...(gable ? { gableCourses: gable.courses, slopesMm: gable.slopes.map(({ length }) => toMm(length)) } : {}),
    ...(ledges.length > 0 ? { ledges: ledges.map(({ course, spans }) => `course ${course}: ${spans.map(({ from, to }) => `${toMm(from)}..${toMm(to)}`).join(' ')}`) } : {}),
    ...(taper ? { taper: `course ${taper.course}: ${taper.spans.map(({ from, to }) => `${toMm(from)}..${toMm(to)}`).join(' ')}` } : {}),
    ...(coreChanges.length > 0 ? { coreChanges: coreChanges.map(({ course, core, seatOutside, seatInside }) => `course ${course}: ${core.code}, seats ${toMm(seatOutside)} ${toMm(seatInside)}`) } : {}),
  };
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
          ...featuresOf(wall),
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
