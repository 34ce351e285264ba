import { describe, expect, it } from '@jest/globals';
import { evaluateRules } from '../../src/domain/reinforcement/evaluate.js';
import type { Rule } from '../../src/domain/reinforcement/rule.js';
import type { LaidJob } from '../../src/domain/takeoff/laid.js';
import { ruleRange, type RuleRangeChanges } from './rule-range.js';

/** [sku, storey, wall, course, quantity in feet or pieces] */
export type Used = readonly [string, string, string, number, number];

export interface DoesNotApply {
  readonly name: string;
  readonly job: LaidJob;
  readonly range?: RuleRangeChanges;
  /** Pressure on every core; 600 where a case says nothing. */
  readonly psf?: number;
}

export interface Applies extends DoesNotApply {
  readonly materials: readonly Used[];
  /** For each instruction, in order, parts that must stand in it. */
  readonly says: readonly (readonly string[])[];
  /** `severity code storey {numbers}` */
  readonly findings?: readonly string[];
}

interface Evaluated {
  readonly materials: readonly Used[];
  readonly says: readonly string[];
  readonly findings: readonly string[];
}

/** Runs a rule alone over its two tables of hand-worked cases. */
export function testRule(rule: Rule, applies: readonly Applies[], doesNotApply: readonly DoesNotApply[]): void {
  describe(rule.meta.id, () => {
    it.each(applies)('$name', (given) => {
      const { materials, says, findings } = evaluated(rule, given);
      expect(materials).toEqual(given.materials);
      expect(findings).toEqual(given.findings ?? []);
      expect(says).toHaveLength(given.says.length);
      given.says.forEach((parts, index) => parts.forEach((part) => expect(says[index]).toContain(part)));
    });

    it.each(doesNotApply)('not: $name', (given) => {
      expect(evaluated(rule, given)).toEqual({ materials: [], says: [], findings: [] });
    });
  });
}

function evaluated(rule: Rule, { job, range, psf = 600 }: DoesNotApply): Evaluated {
  const { materials, instructions, findings } = evaluateRules(job, ruleRange(range), () => ({ psf, basis: 'pour' }), [rule]);
  return {
    materials: materials.flatMap(({ sku, because }) =>
      because.map(({ storey, wall, course, quantity }): Used => [sku, String(storey), String(wall), Number(course), quantity]),
    ),
    says: instructions.map(({ text }) => text),
    findings: findings.map(({ code, severity, storey, numbers }) => `${severity} ${code} ${storey} ${JSON.stringify(numbers)}`),
  };
}
