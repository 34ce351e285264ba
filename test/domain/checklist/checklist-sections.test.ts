import { describe, expect, it } from '@jest/globals';
import { checklistSections, countsText, type ChecklistItem } from '../../../src/domain/checklist/index.js';
import { measure } from '../../../src/domain/pipeline.js';
import { heron, scheduleOf } from '../../support/small-schedules.js';

const item = (wall: string | null, course: number | null, rule: string, text: string, phase: ChecklistItem['phase'] = 'laying') => ({
  storey: 'S1', phase, wall, course, rule, text, counts: [],
});

describe('the sections of a printed checklist', () => {
  it('say once what a rule says of several courses of a wall, and keep an item for each', () => {
    const items = [
      item(null, null, 'dowels', 'Mark.', 'before-work'),
      item('A', 1, 'tape', 'Tape it.'),
      item('A', 1, 'foam', 'Foam it.'),
      item('A', 2, 'tape', 'Tape it.'),
      item('A', 3, 'tape', 'Tape it twice.'),
      item('A', 3, 'strap', 'Tape it.'),
      item('B', 1, 'tape', 'Tape it.'),
      item(null, null, 'hose', 'Reduce.', 'before-pour'),
    ];
    expect(checklistSections(items).map(({ wall, phase, blocks }) => [phase, wall, blocks.map(({ text, items: of }) => [text, of.map(({ rule, course }) => `${rule} ${course}`)])])).toEqual([
      ['before-work', null, [['Mark.', ['dowels null']]]],
      ['laying', 'A', [['Tape it.', ['tape 1', 'tape 2']], ['Foam it.', ['foam 1']], ['Tape it twice.', ['tape 3']], ['Tape it.', ['strap 3']]]],
      ['laying', 'B', [['Tape it.', ['tape 1']]]],
      ['before-pour', null, [['Reduce.', ['hose null']]]],
    ]);
  });

  it('of a measured wall hold every item, each once', () => {
    const { checklist } = measure(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }]), heron());
    const held = checklistSections(checklist).flatMap(({ blocks }) => blocks.flatMap(({ items }) => items.map(({ key }) => key)));
    expect([...held].sort()).toEqual(checklist.map(({ key }) => key).sort());
    // Six courses with two closures each are one block of six boxes (decision 27), and the sheet reads section by section.
    expect(checklistSections(checklist).flatMap(({ blocks }) => blocks).filter(({ items }) => items.length > 1).map(({ items }) => items.map(({ rule, course }) => `${rule} ${course}`))).toEqual([
      [1, 2, 3, 4, 5, 6].map((course) => `end-closure ${course}`),
    ]);
  });

  it('tell counts in pieces and feet, with metres beside them for a job drawn in metres', () => {
    const counts = [{ sku: 'WIRE-16', quantity: 2, unit: 'each' }, { sku: 'FOAM-24', quantity: 46 / 12, unit: 'ft' }] as const;
    // 46 in = 3.8333 ft = 1.1684 m.
    expect(countsText(counts, false)).toBe('2 × WIRE-16, 3.83 ft FOAM-24');
    expect(countsText(counts, true)).toBe('2 × WIRE-16, 3.83 ft (1.17 m) FOAM-24');
    expect(countsText([], true)).toBe('');
    // 812.8 mm = 32 in; 7112 mm = 280 in.
    const placed = [{ sku: 'CTIE-14', quantity: 2, unit: 'each', atMm: [7112, 812.8] }, { sku: 'TAPE-4', quantity: 4, unit: 'ft', atMm: [812.8] }] as const;
    expect(countsText(placed, false)).toBe('2 × CTIE-14, 4 ft TAPE-4, at 32, 280 in');
    expect(countsText(placed, true)).toBe('2 × CTIE-14, 4 ft (1.22 m) TAPE-4, at 813, 7112 mm');
    expect(countsText([{ sku: 'CTIE-14', quantity: 7, unit: 'each', atMm: [1, 2, 3, 4, 5, 6, 7] }], false)).toBe('7 × CTIE-14');
  });
});
