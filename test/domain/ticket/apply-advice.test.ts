import { describe, expect, it } from '@jest/globals';
import { applyAdvice } from '../../../src/domain/ticket/apply-advice.js';
import { finding } from '../../../src/domain/evidence/finding.js';
import { questionKey } from '../../../src/domain/ticket/question-key.js';
import type { Advice } from '../../../src/domain/advice/advice.js';

const odd = (wall: string, turnDeg = 112.4) => finding('turn-not-made', { storey: 'S1', wall, numbers: { turnDeg, core: '6' } });
const answer = (turnDeg: number, ...walls: string[]): Advice => ({
  question: questionKey(odd('A', turnDeg)),
  lifts: walls.map((wall) => ({ code: 'turn-not-made', storey: 'S1', wall })),
  text: 'Hinge it and brace the bend.',
});

describe('applyAdvice', () => {
  it('without advice nothing is lifted', () => {
    const findings = [odd('A'), odd('B')];
    expect(applyAdvice(findings, [])).toEqual({ findings, lifted: [] });
  });

  it('lifts the question at the places the answer names, and only there', () => {
    expect(applyAdvice([odd('A'), odd('B')], [answer(112.4, 'A')])).toEqual({ findings: [odd('B')], lifted: [odd('A')] });
  });

  it('lifts it everywhere where the answer names no place', () => {
    expect(applyAdvice([odd('A'), odd('B')], [answer(112.4)])).toEqual({ findings: [], lifted: [odd('A'), odd('B')] });
  });

  it('a changed number is open again at the same place', () => {
    expect(applyAdvice([odd('A', 114)], [answer(112.4, 'A')])).toEqual({ findings: [odd('A', 114)], lifted: [] });
  });

  it('does not reach another storey or another code', () => {
    const upstairs = { ...odd('A'), storey: 'S2' };
    const acute = finding('turn-acute', { storey: 'S1', wall: 'A', numbers: { turnDeg: 112.4, core: '6' } });
    expect(applyAdvice([upstairs, acute], [answer(112.4, 'A')])).toEqual({ findings: [upstairs, acute], lifted: [] });
  });

  it('a wall left open by the answer takes every wall of the storey', () => {
    const wide: Advice = { ...answer(112.4), lifts: [{ code: 'turn-not-made', storey: 'S1', wall: null }] };
    expect(applyAdvice([odd('A'), odd('B'), { ...odd('C'), storey: 'S2' }], [wide]).lifted).toEqual([odd('A'), odd('B')]);
  });

  it('leaves notes alone', () => {
    const note = finding('pour-not-stated');
    expect(applyAdvice([note], [{ question: questionKey(note), lifts: [], text: '' }])).toEqual({ findings: [note], lifted: [] });
  });

  it('counts twice what was found twice', () => {
    expect(applyAdvice([odd('A'), odd('A')], [answer(112.4, 'A')]).lifted).toHaveLength(2);
  });
});
