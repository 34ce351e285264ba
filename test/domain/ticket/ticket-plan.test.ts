import { describe, expect, it } from '@jest/globals';
import { finding } from '../../../src/domain/evidence/finding.js';
import type { Question } from '../../../src/domain/ticket/question.js';
import { ticketPlan, type StandingTicket } from '../../../src/domain/ticket/ticket-plan.js';

const question = (key: string, ...walls: string[]): Question => ({
  key, code: 'turn-not-made', severity: 'hold', text: key, findings: walls.map((wall) => finding('turn-not-made', { storey: 'S1', wall })),
});
const ticket = (id: string, questionKey: string, state: StandingTicket['state'], ...walls: string[]): StandingTicket => ({
  id, questionKey, state, answered: state === 'answered', findings: walls.map((wall) => ({ storey: 'S1', wall })),
});

describe('ticketPlan', () => {
  it('raises one ticket a question, and keeps it in the next run', () => {
    const asked = [question('turn=112', 'A', 'B')];
    expect(ticketPlan([], asked)).toEqual({ raise: asked, keep: [], reopen: [], settle: [] });
    expect(ticketPlan([ticket('t', 'turn=112', 'open', 'A')], asked)).toEqual({ raise: [], keep: [{ id: 't', question: asked[0] }], reopen: [], settle: [] });
  });

  it('an answer holds for the walls it was given for, and for fewer of them', () => {
    const fewer = question('turn=112', 'A');
    expect(ticketPlan([ticket('t', 'turn=112', 'answered', 'A', 'B')], [fewer]).keep).toEqual([{ id: 't', question: fewer }]);
  });

  it('the same question at a further wall is open again', () => {
    const further = question('turn=112', 'A', 'C');
    expect(ticketPlan([ticket('t', 'turn=112', 'answered', 'A')], [further])).toEqual(
      { raise: [], keep: [], reopen: [{ id: 't', question: further, because: 'new-place' }], settle: [] });
  });

  it('a changed number is another question; the ticket of the old one is settled', () => {
    const changed = question('turn=114', 'A');
    expect(ticketPlan([ticket('t', 'turn=112', 'claimed', 'A')], [changed])).toEqual({ raise: [changed], keep: [], reopen: [], settle: ['t'] });
  });

  it('a ticket closed because its cause was gone opens when the cause is back, unless it had been answered for that wall', () => {
    expect(ticketPlan([ticket('t', 'turn=112', 'closed', 'A')], [])).toEqual({ raise: [], keep: [], reopen: [], settle: [] });
    const back = question('turn=112', 'A');
    expect(ticketPlan([ticket('t', 'turn=112', 'closed', 'A')], [back]).reopen).toEqual([{ id: 't', question: back, because: 'cause-returned' }]);
    const answered = { ...ticket('t', 'turn=112', 'closed', 'A'), answered: true };
    expect(ticketPlan([answered], [back])).toEqual({ raise: [], keep: [{ id: 't', question: back }], reopen: [], settle: [] });
    expect(ticketPlan([answered], [question('turn=112', 'A', 'B')]).reopen).toHaveLength(1);
  });
});
