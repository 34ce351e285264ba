import { describe, expect, it } from '@jest/globals';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import { differences } from '../../oracles/differences.js';
import { brokenLaws } from '../../oracles/laid-laws.js';
import { slowTakeoff } from '../../oracles/slow-takeoff.js';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { ORDINARY_PLANS } from '../../support/ordinary-plans.js';
import { heron } from '../../support/small-schedules.js';

const range = heron();

describe.each(ORDINARY_PLANS.map((document) => [document.name, document] as const))('ordinary plan: %s', (_, document) => {
  const takeoff = takeOff(canonicalSchedule(document), range);

  it('raises no advise and no hold', () => {
    expect(takeoff.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  it('is as the slow take-off has it', () => {
    expect(differences(takeoff, slowTakeoff(document))).toEqual([]);
  });

  it('keeps every law of laying, breaks no bond where no tee forces it, buys no more than its bound and two', () => {
    expect(brokenLaws(takeoff, range)).toEqual([]);
    const tees = takeoff.laid.storeys.flatMap(({ junctions }) => junctions).filter(({ kind }) => kind === 'tee');
    if (tees.length === 0) expect(takeoff.bondBreaks).toEqual([]);
    for (const { bought, lowerBound } of takeoff.units) expect(bought).toBeLessThanOrEqual(lowerBound + 2);
  });
});

it('there are twenty of them', () => {
  expect(ORDINARY_PLANS).toHaveLength(20);
  expect(new Set(ORDINARY_PLANS.map(({ name }) => name)).size).toBe(20);
});
