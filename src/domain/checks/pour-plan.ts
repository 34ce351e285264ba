import { meant } from '../quantity/rounding.js';
import { ASSUMED_MIX, ASSUMED_WORDS } from '../engineering/aci-347-04/assumed-mix.js';
import { CoherentUnits } from './both-units.js';
import { coresOfWall, cubicMetres, topOfWall } from '../takeoff/index.js';
import { dischargeOf } from './pour-discharge.js';
import { fasterOf, pourPaces, slowerPace, supplyWords, type Placed, type PourPace } from './pour-pace.js';
import { finding, type Finding } from '../evidence/finding.js';
import { feetPerHourToMetresPerHour, kgPerM3ToPcf, psfToKpa } from '../quantity/us-customary.js';
import { inUnit } from '../quantity/quantity.js';
import { liftVolumeStep, trucksStep } from './lift-steps.js';
import { liquidHead } from '../engineering/aci-347-04/liquid-head.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { toFeet, toMm, type Nm } from '../quantity/length.js';
import { workedStep } from './worked-step.js';
import type { CheckContext, JobCheck } from './job-check.js';
import type { CheckReport } from './check-report.js';
import type { Core } from '../range/range.js';
import type { LaidStorey } from '../takeoff/laid.js';
import type { TraceStep } from '../evidence/trace.js';

type Results = Readonly<Record<string, number | string>>;

const UNITS = new CoherentUnits('us-customary');
const SOURCE = 'en5151-forms p. 7';
const NOTES = [
  'Worked in feet and yards; metric results are converted exactly. No time is counted for moving the hose, waiting for trucks or vibrating.',
  'The pour comes round to the same place after the time of one lift; what lies there must still take the vibrator.',
] as const;

/**
 * The pour of each storey lift by lift: concrete, lifts, rate of rise, times, trucks and their interval, time for discharge and pressure.
 *
 * What the pour does not state is said and left out, never assumed but for the time of discharge and the unit weight, which are listed. Notes
 * `discharge-late` where a truck is not emptied in time at the slower of the paces stated.
 */
export const pourPlanOfJob: JobCheck = (job) =>
  job.takeoff.laid.storeys.flatMap((storey) => {
    const order = job.takeoff.concrete.find((each) => each.storey === storey.id);
    const span = spanOf(storey);
    return order === undefined || order.nm3 <= 0n || span.height <= 0 ? [] : [report(job, storey, span, cubicMetres(order.nm3), order.orderYd3)];
  });

/** From the lowest foot to the highest top of a storey's walls, gables with them; whether every wall goes all the way. */
function spanOf({ walls }: LaidStorey): { readonly height: Nm; readonly even: boolean } {
  const [low, high] = [Math.min(...walls.map(({ base }) => base)), Math.max(...walls.map((wall) => wall.base + topOfWall(wall)))];
  const even = walls.every((wall) => wall.gable === null && wall.base === low && wall.base + topOfWall(wall) === high);
  return { height: walls.length === 0 ? 0 : high - low, even };
}

function report(job: CheckContext, storey: LaidStorey, span: ReturnType<typeof spanOf>, m3: number, orderYd3: number): CheckReport {
  const { schedule: { pour }, range } = job;
  const lift = Math.min(range.parameters.liftHeight, span.height);
  const lifts = Math.ceil(span.height / lift);
  const { placed, trace } = placedOf(m3, span.height, lift);
  const paces = pourPaces(UNITS, placed, pour);
  const slow = slowerPace(paces);
  const trucks = trucksOf(job, placed, orderYd3);
  const pressed = pressuresOf(job, storey, lift);
  const discharge = dischargeOf(storey.id, pour, slow);
  const m2 = placed.areaFt2 / inUnit('area', 'ft2', 1);
  const missing = [pour?.pumpM3PerH === undefined && 'pump', pour?.truckM3 === undefined && 'truck', pour?.riseMPerH === undefined && 'rise'].filter((name) => name !== false);
  return {
    check: 'pour-plan', storey: storey.id, core: null, places: [],
    results: {
      concreteM3: meant(m3), concreteYd3: meant(placed.volumeYd3), orderM3: meant(orderYd3 / inUnit('volume', 'yd3', 1)), orderYd3,
      planM2: meant(m2), planFt2: meant(placed.areaFt2), heightMm: toMm(span.height), lifts, liftMm: toMm(lift),
      ...paceResults(paces), ...trucks.results, ...pressed.results, ...discharge.results,
      ...(missing.length > 0 && { notStated: missing.join(', ') }),
    },
    trace: [...trace, ...paces.flatMap((pace) => pace.trace), ...trucks.trace, ...pressed.trace],
    source: SOURCE,
    defaults: [...pressed.defaults, ...discharge.defaults],
    notes: [...NOTES, ...planNotes(span.even, storey), ...paceNotes(paces), ...discharge.notes],
    findings: [...discharge.findings, ...outrun(storey.id, paces)],
  };
}

function placedOf(m3: number, height: Nm, lift: Nm): { readonly placed: Placed; readonly trace: readonly TraceStep[] } {
  const [ft3, h] = [meant(inUnit('volume', 'ft3', m3)), toFeet(height)];
  const area = workedStep('plan area of the cores, evened out over the height', 'A = V / h', `${n(ft3)} / ${n(h)}`, ft3 / h, 'ft2', 'geometry');
  const volume = liftVolumeStep(UNITS, area.value, toFeet(lift));
  return { placed: { areaFt2: area.value, volumeYd3: UNITS.of('volume', m3), liftYd3: volume.value }, trace: [area, volume] };
}

/** At the pump's full output, and beside it at the rise that is stated. */
function paceResults(paces: readonly PourPace[]): Results {
  const each = paces.map((pace): Results => {
    const { riseFtPerH, supplyYd3PerH, liftTimeH, pourTimeH, truckTimeH } = pace;
    const riseMPerH = feetPerHourToMetresPerHour(riseFtPerH);
    const supplyM3PerH = meant(supplyYd3PerH / inUnit('volume', 'yd3', 1));
    const truckMin = truckTimeH === null ? null : meant(truckTimeH * 60);
    if (pace.by === 'stated rise')
      return {
        statedRiseMPerH: riseMPerH, statedRiseFtPerH: riseFtPerH, statedSupplyM3PerH: supplyM3PerH, statedSupplyYd3PerH: meant(supplyYd3PerH), statedLiftTimeH: meant(liftTimeH), statedPourTimeH: meant(pourTimeH),
        ...(truckMin !== null && { statedTruckTimeMin: truckMin, statedTruckIntervalMin: truckMin }),
      };
    return {
      riseMPerH, riseFtPerH: meant(riseFtPerH), liftTimeH: meant(liftTimeH), pourTimeH: meant(pourTimeH),
      ...(truckMin !== null && { truckTimeMin: truckMin, truckIntervalMin: truckMin }),
    };
  });
  const [faster, slow] = [fasterOf(paces), slowerPace(paces)];
  return Object.assign({}, ...each, faster && { faster }, slow && { roundTimeH: meant(slow.liftTimeH) }) as Results;
}

/** For what is ordered, and for the concrete of one lift. */
function trucksOf({ schedule: { pour } }: CheckContext, { liftYd3 }: Placed, orderYd3: number): { readonly results: Results; readonly trace: readonly TraceStep[] } {
  if (pour?.truckM3 === undefined) return { results: {}, trace: [] };
  const truck = UNITS.of('volume', pour.truckM3);
  const [all, perLift] = [trucksStep('trucks of the order', orderYd3, truck), trucksStep('trucks of a lift', liftYd3, truck)];
  return { results: { trucks: all.value, trucksPerLift: perLift.value }, trace: [all, perLift] };
}

/** The pressure that rules and checks share, of each core, and never below a lift of liquid. */
function pressuresOf({ schedule: { pour }, pressureOf }: CheckContext, storey: LaidStorey, lift: Nm): { readonly results: Results; readonly trace: readonly TraceStep[]; readonly defaults: readonly string[] } {
  const pcf = pour?.unitWeightKgPerM3 === undefined ? ASSUMED_MIX.unitWeightPcf : kgPerM3ToPcf(pour.unitWeightKgPerM3);
  const least = workedStep('head of one lift', 'w · d', `${n(pcf)} · ${n(toFeet(lift))}`, liquidHead(pcf, toFeet(lift)), 'psf', 'aci-347-04 §2.2.2');
  const cores = [...new Map<string, Core>(storey.walls.flatMap(coresOfWall).map((core) => [core.code, core])).values()];
  const pressed = cores.map((core) => {
    const { psf, basis } = pressureOf(storey.id, core);
    return { core: core.code, basis, psf: Math.max(psf, least.value) };
  });
  const worst = pressed.reduce((most, each) => (each.psf > most.psf ? each : most));
  const apart = pressed.length < 2 ? [] : pressed.map(({ core, psf }) => ({ [`core${core}PressureKpa`]: psfToKpa(psf), [`core${core}PressurePsf`]: psf }));
  const results = {
    pressureKpa: psfToKpa(worst.psf), pressurePsf: worst.psf, pressureCore: worst.core, pressureBasis: worst.basis,
    leastPressureKpa: psfToKpa(least.value), leastPressurePsf: least.value, ...(Object.assign({}, ...apart) as Results),
  };
  return { results, trace: [least], defaults: pour?.unitWeightKgPerM3 === undefined ? [ASSUMED_WORDS.unitWeight] : [] };
}

function planNotes(even: boolean, { walls }: LaidStorey): readonly string[] {
  const holes = walls.some(({ openings }) => openings.length > 0);
  return [
    ...(even ? [] : ['The walls do not all rise from one level to one top: the plan area is the average over the whole height. Where fewer walls are poured, concrete rises faster.']),
    ...(holes ? ['Openings are taken out of the plan area as an average: beside them concrete rises faster than this, above and below slower.'] : []),
  ];
}

/** The pump fills faster than the rise that the pressure is for. */
function outrun(storey: string, paces: readonly PourPace[]): readonly Finding[] {
  const [pump, stated] = paces;
  if (fasterOf(paces) !== 'pump' || pump === undefined || stated === undefined) return [];
  const numbers = { pumpRiseFtPerH: meant(pump.riseFtPerH), riseFtPerH: stated.riseFtPerH, holdAtYd3PerH: meant(stated.supplyYd3PerH) };
  return [finding('pump-outruns-rise', { storey, numbers, source: 'aci-347-04 §2.2.2' })];
}

function paceNotes(paces: readonly PourPace[]): readonly string[] {
  const faster = fasterOf(paces);
  const stated = paces[1];
  if (faster === undefined || stated === undefined) return [];
  if (faster === 'neither') return ['The pump fills at just the rate of rise that is stated.'];
  const words = supplyWords(stated.supplyYd3PerH);
  return faster === 'pump'
    ? [`At its full output the pump fills faster than the rate of rise that is stated and for which the pressure is worked out: hold it at ${words}.`]
    : [`The rate of rise that is stated needs ${words}, more than the pump gives: the pour is slower than that.`];
}
