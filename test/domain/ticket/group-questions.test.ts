import { describe, expect, it } from '@jest/globals';
import { finding } from '../../../src/domain/evidence/finding.js';
import { groupQuestions } from '../../../src/domain/ticket/group-questions.js';

const odd = (wall: string, turnDeg: number) => finding('turn-not-made', { storey: 'S1', wall, numbers: { turnDeg, core: '6' } });

describe('groupQuestions', () => {
  it('asks once for all corners of one turn and core', () => {
    const findings = [odd('A', 112.4), odd('C', 67.3), odd('B', 112.4)];
    expect(groupQuestions(findings)).toEqual([
      { key: 'turn-not-made turnDeg=112.4 core=6', code: 'turn-not-made', severity: 'hold', text: 'No corner unit of the range makes this turn: turn 112.4°, core 6.', findings: [findings[0], findings[2]] },
      { key: 'turn-not-made turnDeg=67.3 core=6', code: 'turn-not-made', severity: 'hold', text: 'No corner unit of the range makes this turn: turn 67.3°, core 6.', findings: [findings[1]] },
    ]);
  });

  it('asks nothing about notes', () => {
    expect(groupQuestions([finding('seam'), finding('pour-not-stated'), finding('height-ripped'), finding('full-liquid-head'), finding('site-not-stated')])).toEqual([]);
  });

  it('asks about advise findings too', () => {
    expect(groupQuestions([finding('pier-narrow', { wall: 'A', numbers: { widthMm: 406.4, core: '6' } })])).toMatchObject([{ code: 'pier-narrow', severity: 'advise' }]);
  });

  it('is a hold where one of its findings is', () => {
    const numbers = { turnDeg: 90, core: '6', otherCore: '8' };
    const [question, ...more] = groupQuestions([finding('core-change', { wall: 'A', numbers }), finding('core-change', { wall: 'B', numbers, severity: 'hold' })]);
    expect(more).toEqual([]);
    expect(question?.severity).toBe('hold');
  });

  it('words lengths in the units of the schedule', () => {
    const short = finding('run-too-short', { wall: 'A', numbers: { lengthMm: 1066.8, core: '6' } });
    expect(groupQuestions([short], 'in')[0]?.text).toContain('length 3\'-6"');
    expect(groupQuestions([short], 'mm')[0]?.text).toContain('length 1067 mm');
  });
});
