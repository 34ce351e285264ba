import type { Advice } from './advice/advice.js';
import { checklistOf, type ChecklistItem, type SeenInStorey } from './checklist/index.js';
import { bracingPlan, type StoreyBracing } from './checks/bracing-plan.js';
import { checkJob } from './checks/check-job.js';
import type { CheckReport } from './checks/check-report.js';
import { ENGINE } from './engine.js';
import type { Finding } from './evidence/finding.js';
import type { Core, FormRange } from './range/range.js';
import { designPressure } from './reinforcement/design-pressure.js';
import { evaluateRules } from './reinforcement/evaluate.js';
import type { CrewInstruction, MaterialLine } from './reinforcement/material-line.js';
import { pourHeight } from './reinforcement/pour-height.js';
import type { PressureOf } from './reinforcement/rule.js';
import type { Schedule } from './schedule/schedule.js';
import { takeOff, type BondMemory, type LaidJob, type Takeoff } from './takeoff/index.js';
import { applyAdvice } from './ticket/apply-advice.js';
import { groupQuestions } from './ticket/group-questions.js';
import type { Question } from './ticket/question.js';

/** Everything the domain says of one schedule on one range with the advice given so far. */
export interface Measurement {
  readonly engine: string;
  readonly range: { readonly code: string; readonly version: number };
  readonly takeoff: Takeoff;
  readonly materials: readonly MaterialLine[];
  readonly instructions: readonly CrewInstruction[];
  readonly checks: readonly CheckReport[];
  /** Where the forms of each storey are braced, in the order of the laid storeys. */
  readonly bracing: readonly StoreyBracing[];
  /** The pre-pour checklist in the order in which the crew walks the job. */
  readonly checklist: readonly ChecklistItem[];
  /** Take-off's and checks' findings together; those that advice lifted are left out. */
  readonly findings: readonly Finding[];
  readonly lifted: readonly Finding[];
  readonly questions: readonly Question[];
}

/** One pressure per storey and core, worked out once and shared by rules and checks (decision 29). */
function pressures(laid: LaidJob, schedule: Schedule, range: FormRange): PressureOf {
  const known = new Map<string, ReturnType<PressureOf>>();
  return (storeyId: string, core: Core) => {
    const key = `${storeyId}/${core.code}`;
    const found = known.get(key);
    if (found) return found;
    const storey = laid.storeys.find((candidate) => candidate.id === storeyId);
    if (!storey) throw new RangeError(`no storey ${storeyId} was laid`);
    const pressure = designPressure(schedule.pour, core, pourHeight(storey, core.code), range.parameters);
    known.set(key, pressure);
    return pressure;
  };
}

/**
 * Measures a schedule: take-off, form reinforcement, checks, and the questions nobody has answered yet.
 *
 * Pure: the same schedule, range and advice give the same measurement for ever.
 *
 * @param schedule canonical schedule, read with this range's cores and course height
 * @param range    the form range in force for the job
 * @param advice   every answer given in the job so far
 */
export const measure = (schedule: Schedule, range: FormRange, advice: readonly Advice[] = []): Measurement => measured(schedule, range, advice, new Map());

/**
 * Measures jobs one after the other as they come; nothing of a job is kept but how its lines were laid, so that lines like them are laid
 * faster. Each measurement is the one `measure` makes.
 */
export function* measureEach(schedules: Iterable<Schedule>, range: FormRange): Generator<Measurement> {
  const memory: BondMemory = new Map();
  for (const schedule of schedules) yield measured(schedule, range, [], memory);
}

/** `core 8: #4 @ 48 in vertical, 3 × #4 ... horizontal`, each answer once. */
function barsAsked(reports: readonly CheckReport[]): string {
  const asked = reports.flatMap(({ check, core, results, places }) =>
    (check === 'wall-bars' ? [results, ...places.map((place) => place.results)] : []).flatMap(({ cell, horizontal }) =>
      cell === undefined ? [] : [`core ${core ?? ''}: ${cell}${horizontal === undefined ? '' : ` in vertical; horizontal ${horizontal}`}`],
    ),
  );
  return [...new Set(asked)].join('. ');
}

/** What is seen to in one go in each storey before the pour: its bars and braces. */
function seenIn(checks: readonly CheckReport[], bracing: readonly StoreyBracing[]): ReadonlyMap<string, SeenInStorey> {
  const barsOf = (storey: string) => checks.filter((report) => report.storey === storey && (report.check === 'wall-bars' || report.check === 'lintel'));
  return new Map(
    bracing.map(({ storey, count, spacing, walls }) => {
      const bars = barsOf(storey).map(({ check, core, results, places }) => ({ check, core, results, places }));
      return [storey, { braces: count, barsAs: JSON.stringify(bars), barsAsked: barsAsked(barsOf(storey)), bracesAs: JSON.stringify({ spacing, walls }) }];
    }),
  );
}

function measured(schedule: Schedule, range: FormRange, advice: readonly Advice[], memory: BondMemory): Measurement {
  const takeoff = takeOff(schedule, range, memory);
  const pressureOf = pressures(takeoff.laid, schedule, range);
  const reinforcement = evaluateRules(takeoff.laid, range, pressureOf);
  const checks = checkJob({ schedule, range, takeoff, materials: reinforcement.materials, pressureOf });
  const bracing = bracingPlan(schedule, range, takeoff.laid);
  const all = [...takeoff.findings, ...reinforcement.findings, ...[...checks, ...bracing].flatMap((each) => each.findings)];
  const { findings, lifted } = applyAdvice(all, advice);
  return {
    engine: ENGINE,
    range: { code: range.code, version: range.version },
    takeoff,
    materials: reinforcement.materials,
    instructions: reinforcement.instructions,
    checks,
    bracing,
    checklist: checklistOf(takeoff.laid, reinforcement.materials, reinforcement.instructions, range, seenIn(checks, bracing)),
    findings,
    lifted,
    questions: groupQuestions(findings, schedule.units),
  };
}
