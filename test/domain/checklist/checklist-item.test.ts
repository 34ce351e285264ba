import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { checklistItem, checklistKey, type ChecklistItem } from '../../../src/domain/checklist/checklist-item.js';
import { checklistOf, type SeenInStorey } from '../../../src/domain/checklist/index.js';
import { measure } from '../../../src/domain/pipeline.js';
import { RULES } from '../../../src/domain/reinforcement/registry.js';
import { heron, scheduleOf } from '../../support/small-schedules.js';

const said: Omit<ChecklistItem, 'key' | 'digest'> = {
  phase: 'laying', rule: 'r', storey: 'S1', wall: 'A', course: 1, text: 'Tape it.', basis: 'common practice',
  counts: [{ sku: 'TAPE', quantity: 4, unit: 'ft' }, { sku: 'BOARD', quantity: 2, unit: 'each' }],
};
const digest = (change: Partial<typeof said>): string => checklistItem({ ...said, ...change }).digest;

describe('the digest of an item', () => {
  it.each<{ what: string; change: Partial<typeof said> }>([
    { what: 'the order of its counts', change: { counts: [...said.counts].reverse() } },
    { what: 'its place', change: { storey: 'S2', wall: null, course: null } },
    { what: 'its rule, phase and basis', change: { rule: 'q', phase: 'before-pour', basis: 'statics' } },
  ])('is the same whatever $what', ({ change }) => expect(digest(change)).toBe(digest({})));

  it.each<{ what: string; change: Partial<typeof said> }>([
    { what: 'a word', change: { text: 'Strap it.' } },
    { what: 'a quantity', change: { counts: [{ sku: 'TAPE', quantity: 4.000_000_003, unit: 'ft' }, said.counts[1]!] } },
    { what: 'a sku', change: { counts: [{ sku: 'TAPE-2', quantity: 4, unit: 'ft' }, said.counts[1]!] } },
    { what: 'a unit', change: { counts: [{ sku: 'TAPE', quantity: 4, unit: 'each' }, said.counts[1]!] } },
    { what: 'another station', change: { counts: [{ ...said.counts[0]!, atMm: [120] }, said.counts[1]!] } },
    { what: 'a count less', change: { counts: said.counts.slice(1) } },
  ])('is another with $what', ({ change }) => expect(digest(change)).not.toBe(digest({})));
});

describe('the key of an item', () => {
  const name = fc.string({ unit: fc.constantFrom('/', '%', '2', 'F', '5', 'a'), minLength: 1, maxLength: 4 });
  const place = fc.record({ storey: name, wall: fc.option(name), course: fc.option(fc.integer({ min: 1, max: 30 })), rule: name });

  it('tells any two places apart, slashes in their names or not', () => {
    fc.assert(fc.property(place, place, (a, b) => expect(checklistKey(a) === checklistKey(b)).toBe(JSON.stringify(a) === JSON.stringify(b))), { seed: 33 });
    expect(checklistKey({ storey: 'S', wall: 'A/1', course: null, rule: 'r' })).not.toBe(checklistKey({ storey: 'S', wall: 'A', course: 1, rule: '/r' }));
  });
});

describe('a job', () => {
  const { takeoff, materials, instructions } = measure(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }]), heron());

  it('names the openings lined with bucks, not those closed by end closures', () => {
    const openings = [
      { mark: 'D1', wall: 'A', at: 48, sill: 0, width: 36, height: 80 },
      { mark: 'D2', wall: 'A', at: 144, sill: 0, width: 36, height: 80, lining: 'end-closure' as const },
    ];
    const buckLines = (only: typeof openings) =>
      measure(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings: only }), heron()).checklist.filter(({ rule }) => rule === 'bucks').map(({ text }) => text);
    expect(buckLines(openings)).toEqual(['Openings lined with bucks: each buck plumb, braced and shored: A D1.']);
    expect(buckLines(openings.slice(1))).toEqual([]);
  });

  it('says how many braces stand in a storey where it is told, and that the crew has been told what to do during the pour', () => {
    const seven = { braces: 7, barsAs: '', barsAsked: 'core 6: #4 @ 48', bracesAs: '' };
    const said = (seen: ReadonlyMap<string, SeenInStorey>, rule: string) => checklistOf(takeoff.laid, materials, instructions, heron(), seen).find((item) => item.rule === rule)?.text ?? '';
    expect(said(new Map([['S1', seven]]), 'braces-anchored')).toMatch(/^Braces of the storey, 7 in number: every one anchored/);
    expect(said(new Map([['S1', seven]]), 'bars-inspected')).toContain('The tables ask at least: core 6: #4 @ 48. What is drawn for the job governs.');
    expect(said(new Map(), 'bars-inspected')).not.toContain('tables');
    expect(said(new Map([['S2', seven]]), 'braces-anchored')).toMatch(/^Every brace anchored/);
    expect([said(new Map(), 'pour-start'), said(new Map(), 're-plumb')].map((text) => text.slice(0, 10))).toEqual(['Crew told:', 'Crew told:']);
  });

  it('that uses material where it has no wall is a defect', () => {
    const stray = materials.map((line) => ({ ...line, because: line.because.map((cause) => ({ ...cause, wall: 'Z' })) }));
    expect(() => checklistOf(takeoff.laid, stray, instructions, heron())).toThrow(/no wall/);
    const nowhere = materials.map((line) => ({ ...line, because: line.because.map((cause) => ({ ...cause, storey: null })) }));
    expect(() => checklistOf(takeoff.laid, nowhere, instructions, heron())).toThrow(/no storey/);
  });

  it('upstairs: the bars and the top of the storey below instead of the footing', () => {
    const upstairs = { storeys: takeoff.laid.storeys.map((storey) => ({ ...storey, onFooting: false })) };
    const [bars, bearing] = checklistOf(upstairs, materials, instructions, heron());
    expect([bars?.text, bearing?.text].join(' ')).toMatch(/^Bars out of the storey below .* Top of the storey below level/);
  });

  it('names no rule as it names what is seen to in a storey', () => {
    const ids = new Set(RULES.map(({ meta }) => meta.id));
    const seenTo = checklistOf(takeoff.laid, materials, instructions, heron()).filter(({ phase }) => phase !== 'laying');
    expect(seenTo.filter(({ rule }) => ids.has(rule))).toEqual([]);
  });
});
