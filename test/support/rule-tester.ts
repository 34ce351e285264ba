import { describe, expect, it } from '@jest/globals';
import { evaluateRules } from '../../src/domain/reinforcement/evaluate.js';
import type { Rule } from '../../src/domain/reinforcement/rule.js';
import type { LaidJob } from '../../src/domain/takeoff/laid.js';
import { ruleRange, type RuleRangeChanges } from './rule-range.js';

/** [sku, storey, wall, course, quantity in feet or pieces] */
export type Used = readonly [string, string, string, number, number];

/** [sku, wall, course, axis stations in inches] */
export type Stationed = readonly [string, string, number, readonly number[]];

export interface DoesNotApply {
  readonly name: string;
  readonly job: LaidJob;
  readonly range?: RuleRangeChanges;
  /** Pressure on every core; 600 where a case says nothing. */
  readonly psf?: number;
}

export interface Applies extends DoesNotApply {
  readonly materials: readonly Used[];
  /** Where it is used, for the places named. */
  readonly stations?: readonly Stationed[];
  /** For each instruction, in order, parts that must stand in it. */
  readonly says: readonly (readonly string[])[];
  /** `severity code storey {numbers}` */
  readonly findings?: readonly string[];
}

interface Evaluated {
  readonly stations: readonly Stationed[];
  readonly materials: readonly Used[];
  readonly says: readonly string[];
  readonly findings: readonly string[];
}

/** Runs a rule alone over its two tables of hand-worked cases. */
export function testRule(rule: Rule, applies: readonly Applies[], doesNotApply: readonly DoesNotApply[]): void {
  describe(rule.meta.id, () => {
    it.each(applies)('$name', (given) => {
      const { materials, stations, says, findings } = evaluated(rule, given);
      for (const [sku, wall, course, at] of given.stations ?? []) {
        expect(stations.filter((each) => each[0] === sku && each[1] === wall && each[2] === course)).toEqual([[sku, wall, course, at]]);
      }
      expect(materials).toEqual(given.materials);
      expect(findings).toEqual(given.findings ?? []);
      expect(says).toHaveLength(given.says.length);
      given.says.forEach((parts, index) => parts.forEach((part) => expect(says[index]).toContain(part)));
    });

    it.each(doesNotApply)('not: $name', (given) => {
      expect(evaluated(rule, given)).toEqual({ materials: [], stations: [], says: [], findings: [] });
    });
  });
}

function evaluated(rule: Rule, { job, range, psf = 600 }: DoesNotApply): Evaluated {
  const { materials, instructions, findings } = evaluateRules(job, ruleRange(range), () => ({ psf, basis: 'pour' }), [rule]);
  return {
    materials: materials.flatMap(({ sku, because }) =>
      because.map(({ storey, wall, course, quantity }): Used => [sku, String(storey), String(wall), Number(course), quantity]),
    ),
    stations: materials.flatMap(({ sku, because }) => because.map(({ wall, course, atMm = [] }): Stationed => [sku, String(wall), Number(course), atMm.map((mm) => Number((mm / 25.4).toFixed(4)))])),
    says: instructions.map(({ text }) => text),
    findings: findings.map(({ code, severity, storey, numbers }) => `${severity} ${code} ${storey} ${JSON.stringify(numbers)}`),
  };
}
