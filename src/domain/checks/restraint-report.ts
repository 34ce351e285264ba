import { inBoth } from './both-units.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { toMm, type Nm } from '../quantity/length.js';
import type { CheckPlace, CheckReport } from './check-report.js';
import type { TraceStep } from '../evidence/trace.js';

/** One place where concrete pushes on something that has to be held, and what holds it. */
export interface RestraintPlace {
  readonly storey: string;
  readonly core: string;
  readonly wall: string;
  readonly course: number | null;
  readonly at: Nm | null;
  readonly forceLb: number;
  /** `600 · 0.5 · 1.333`: what was put into the check's equation. */
  readonly substituted: string;
  readonly resistedBy: string;
  /** What of the resistance is known as a number [lb]; null where nothing is published. */
  readonly capacityLb: number | null;
  readonly more?: Readonly<Record<string, number | string>>;
}

export interface RestraintCheck {
  readonly check: string;
  readonly name: string;
  readonly equation: string;
  readonly source?: string;
  readonly notes: readonly string[];
  readonly defaults?: readonly string[];
}

const digits = (value: number): number => Number(value.toPrecision(6));

/** A force in both units, six digits, under `<name>Kn` and `<name>Lb`. */
export const bothForces = (name: string, lb: number): Readonly<Record<string, number>> => ({
  [`${name}Kn`]: digits(inBoth('force', lb, 'us-customary').si.value), [`${name}Lb`]: digits(lb),
});

/** A force per unit length in both units, six digits, under `<name>KnPerM` and `<name>LbPerFt`. */
export const bothLineForces = (name: string, lbPerFt: number): Readonly<Record<string, number>> => ({
  [`${name}KnPerM`]: digits(inBoth('force per length', lbPerFt, 'us-customary').si.value), [`${name}LbPerFt`]: digits(lbPerFt),
});

/** Numbers to put in a trace. */
export const factors = (...values: readonly number[]): string => values.map((value) => n(value)).join(' · ');

/**
 * One report for each storey and core that has such places, in their order; traced at the place of the greatest force.
 *
 * `share` of a place is force over capacity, over 1 where what is known does not carry it alone; absent where no capacity is known.
 */
export function restraintReports(of: RestraintCheck, places: readonly RestraintPlace[]): readonly CheckReport[] {
  const groups = new Map<string, RestraintPlace[]>();
  for (const place of places) {
    const key = JSON.stringify([place.storey, place.core]);
    const group = groups.get(key);
    if (group) group.push(place);
    else groups.set(key, [place]);
  }
  return [...groups.values()].map((group) => report(of, group));
}

function report(of: RestraintCheck, group: readonly RestraintPlace[]): CheckReport {
  const worst = group.reduce((most, place) => (place.forceLb > most.forceLb ? place : most));
  const source = of.source ?? 'statics';
  const over = group.filter(({ capacityLb, forceLb }) => capacityLb !== null && forceLb > capacityLb).length;
  const step: TraceStep = { name: of.name, equation: of.equation, substituted: worst.substituted, value: worst.forceLb, unit: 'lb', source };
  return {
    check: of.check, storey: worst.storey, core: worst.core,
    results: { places: group.length, ...bothForces('force', worst.forceLb), placesOverCapacity: over },
    places: group.map(placeOf), trace: [step], source, defaults: of.defaults ?? [], notes: of.notes, findings: [],
  };
}

function placeOf({ wall, course, at, forceLb, resistedBy, capacityLb, more }: RestraintPlace): CheckPlace {
  const held: Readonly<Record<string, number>> = capacityLb === null ? {} : { capacityLb: digits(capacityLb), share: digits(forceLb / capacityLb) };
  return { wall, course, atMm: at === null ? null : toMm(at), results: { ...bothForces('force', forceLb), ...more, resistedBy, ...held } };
}
