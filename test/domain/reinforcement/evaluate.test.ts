import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { NM_PER_FOOT } from '../../../src/domain/quantity/length.js';
import { evaluateRules } from '../../../src/domain/reinforcement/evaluate.js';
import { RULES } from '../../../src/domain/reinforcement/registry.js';
import type { Consumption, Rule } from '../../../src/domain/reinforcement/rule.js';
import { closure, joint, laidJob, straight, times, type WallSketch } from '../../support/laid.js';
import { MATERIALS, ruleRange } from '../../support/rule-range.js';

const rule = (id: string, ...materials: readonly Consumption[]): Rule => ({
  meta: { id, title: '', trigger: '', consumes: [], parameters: [], basis: 'common practice' },
  evaluate: () => ({ materials, instructions: [], findings: [] }),
});
const at = (wall: string, course: number) => ({ storey: 'S1', wall, course });
const pressure = () => ({ psf: 600, basis: 'pour' as const });
const evaluate = (rules: readonly Rule[], range = ruleRange()) => evaluateRules(laidJob(), range, pressure, rules);

describe('evaluating the rules', () => {
  it('sums a material over the job: one cause for each rule, wall and course, in feet, its stations in order and each once', () => {
    const { materials } = evaluate([
      rule('one', { place: at('A', 1), material: 'tape', at: [NM_PER_FOOT, 0], length: 2 * NM_PER_FOOT }, { place: at('A', 1), material: 'tape', at: [NM_PER_FOOT, NM_PER_FOOT / 2], length: 3 * NM_PER_FOOT }, { place: at('A', 2), material: 'tape', length: NM_PER_FOOT }),
      rule('two', { place: at('A', 1), material: 'tape', length: NM_PER_FOOT / 2 }),
    ]);
    expect(materials).toEqual([{
      sku: 'TAPE-4', kind: 'tape', size: '4 in', quantity: 6.5, unit: 'ft', pack: { quantity: 150, unit: 'ft' },
      because: [
        { rule: 'one', storey: 'S1', wall: 'A', course: 1, quantity: 5, atMm: [0, 152.4, 304.8] },
        { rule: 'one', storey: 'S1', wall: 'A', course: 2, quantity: 1, atMm: [] },
        { rule: 'two', storey: 'S1', wall: 'A', course: 1, quantity: 0.5, atMm: [] },
      ],
    }]);
  });

  it('does not round packs: that happens once, in the pricing', () => {
    const { materials } = evaluate([rule('one', { place: at('A', 1), material: 'wire-tie', count: 3 })]);
    expect(materials[0]).toMatchObject({ quantity: 3, unit: 'each', pack: { quantity: 500, unit: 'each' } });
  });

  it('a tenth of a foot ten times is one foot: lengths are summed in whole nanometres', () => {
    const tenth = { place: at('A', 1), material: 'foam' as const, length: NM_PER_FOOT / 10 };
    const { materials } = evaluate([rule('one', ...Array.from({ length: 10 }, (_, n) => ({ ...tenth, place: at('A', n + 1) })))]);
    expect(materials[0]?.quantity).toBe(1);
  });

  it('takes the material that is measured as the rule measures it, the first listed', () => {
    const range = ruleRange({ materials: [
      { sku: 'STRIPS', kind: 'tape', size: 'cut', pack: { quantity: 10, unit: 'each' }, strengthLbPerIn: null },
      ...MATERIALS,
    ] });
    expect(evaluate([rule('one', { place: at('A', 1), material: 'tape', length: NM_PER_FOOT })], range).materials.map(({ sku }) => sku)).toEqual(['TAPE-4']);
  });

  it('names what the range cannot serve, once for each rule and material', () => {
    const range = ruleRange({ materials: MATERIALS.filter(({ kind }) => kind !== 'board') });
    const board = { place: at('A', 1), material: 'board' as const, length: NM_PER_FOOT };
    const { materials, findings } = evaluate([rule('one', board, board), rule('two', board)], range);
    expect(materials).toEqual([]);
    expect(findings.map(({ code, severity, numbers }) => [code, severity, numbers])).toEqual([
      ['outside-method', 'hold', { rule: 'one', material: 'board', measuredIn: 'ft' }],
      ['outside-method', 'hold', { rule: 'two', material: 'board', measuredIn: 'ft' }],
    ]);
  });

  it('a length of bar is one piece: pieces are told by length and count over the job, longest first, and sum to the feet', () => {
    const pin = (wall: string, course: number, feet: number): Consumption => ({ place: at(wall, course), material: { bar: '#4' }, length: feet * NM_PER_FOOT });
    const { materials } = evaluate([rule('one', pin('A', 1, 4), pin('A', 1, 4), pin('A', 2, 5)), rule('two', pin('B', 1, 4))]);
    expect(materials).toEqual([expect.objectContaining({
      sku: 'BAR-4', quantity: 17, unit: 'ft', pieces: [{ length: 5 * NM_PER_FOOT, count: 1 }, { length: 4 * NM_PER_FOOT, count: 3 }],
    })]);
    expect(evaluate([rule('one', { place: at('A', 1), material: 'tape', length: NM_PER_FOOT })]).materials[0]).not.toHaveProperty('pieces');
  });

  it('a piece longer than the stock bar is a finding and is not counted; one as long as it is', () => {
    const pin = (length: number): Consumption => ({ place: at('A', 1), material: { bar: '#4' }, length });
    const { materials, findings } = evaluate([rule('one', pin(20 * NM_PER_FOOT), pin(20 * NM_PER_FOOT + 1_000_000))]);
    expect(materials).toMatchObject([{ quantity: 20, pieces: [{ length: 20 * NM_PER_FOOT, count: 1 }] }]);
    expect(findings).toMatchObject([
      { code: 'outside-method', severity: 'hold', storey: 'S1', numbers: { rule: 'one', material: 'bar #4', measuredIn: 'ft', pieceMm: 6097, stockMm: 6096 } },
    ]);
  });

  it('a hundred thousand places are one line', () => {
    const many = Array.from({ length: 100_000 }, (_, n): Consumption => ({ place: at(`W${n}`, 1), material: 'tape', length: NM_PER_FOOT }));
    const { materials } = evaluate([rule('one', ...many)]);
    expect(materials[0]?.quantity).toBe(100_000);
    expect(materials[0]?.because).toHaveLength(100_000);
  });
});

const wallArb: fc.Arbitrary<Omit<WallSketch, 'mark'>> = fc
  .record({ feet: fc.integer({ min: 2, max: 60 }), courses: fc.integer({ min: 1, max: 9 }), free: fc.boolean(), ripped: fc.boolean() })
  .map(({ feet, courses, free, ripped }) => {
    const length = feet * 12;
    const pieces = [straight(0, 48, [4, 12]), straight(48, 60, [52], { cutEnds: 2 }), ...(free ? [closure(0, 'end'), closure(length - 2.5, 'end')] : [])];
    const course = { pieces, joints: [joint(48)] };
    return { length, courses: [...times(courses, course), ...(ripped ? [{ ...course, height: 12, ripped }] : [])] };
  });
const marked = (walls: readonly Omit<WallSketch, 'mark'>[]): readonly WallSketch[] => walls.map((wall, n) => ({ ...wall, mark: `W${n}` }));

describe('whatever the walls', () => {
  const measured = (walls: readonly WallSketch[]) => evaluateRules(laidJob({ walls }), ruleRange(), pressure);
  const totals = (walls: readonly WallSketch[]) => measured(walls).materials.map(({ sku, quantity }) => [sku, quantity]);

  it('the order of the walls moves no total', () => {
    fc.assert(fc.property(fc.array(wallArb, { minLength: 1, maxLength: 6 }), (drawn) => {
      const walls = marked(drawn);
      expect(totals([...walls].reverse())).toEqual(totals(walls));
    }), { numRuns: 60 });
  });

  it('causes sum to the total, to the nanometre', () => {
    fc.assert(fc.property(fc.array(wallArb, { minLength: 1, maxLength: 6 }), (drawn) => {
      for (const { quantity, unit, because } of measured(marked(drawn)).materials) {
        const whole = (value: number) => Math.round(value * (unit === 'ft' ? NM_PER_FOOT : 1));
        expect(because.reduce((sum, cause) => sum + whole(cause.quantity), 0)).toBe(whole(quantity));
        for (const { rule: id } of because) expect(RULES.map(({ meta }) => meta.id)).toContain(id);
      }
    }), { numRuns: 60 });
  });

  it('two jobs side by side take what each takes alone', () => {
    fc.assert(fc.property(fc.array(wallArb, { minLength: 2, maxLength: 6 }), (drawn) => {
      const walls = marked(drawn);
      const sum = new Map<string, number>();
      for (const part of [walls.slice(0, 1), walls.slice(1)]) for (const { sku, quantity } of measured(part).materials) sum.set(sku, (sum.get(sku) ?? 0) + quantity);
      for (const { sku, quantity } of measured(walls).materials) expect(Math.round(Number(sum.get(sku)) * NM_PER_FOOT)).toBe(Math.round(quantity * NM_PER_FOOT));
    }), { numRuns: 60 });
  });
});
