import { describe, expect, it } from '@jest/globals';
import { dischargeLimit, type DischargeEdition } from '../../src/domain/engineering/astm-c94/discharge-limit.js';
import { liftVolume } from '../../src/domain/engineering/en5151-forms/lift-volume.js';
import { mixerOutput } from '../../src/domain/engineering/en5151-forms/mixer-output.js';
import { rateOfRise } from '../../src/domain/engineering/en5151-forms/rate-of-rise.js';
import { truckLoads } from '../../src/domain/engineering/en5151-forms/truck-loads.js';
import { itIsAsPublished, num, publishedRows, type Inputs } from './published-rows.js';

const yards = (i: Inputs): number => liftVolume(num(i, 'A_ft2'), num(i, 'd_ft')) / 27;

describe('placing', () => {
  itIsAsPublished(publishedRows('en5151-forms/placing'), {
    rise: (i) => rateOfRise(num(i, 'Q_ft3'), num(i, 'A_ft2')),
    mixer: (i) => mixerOutput(num(i, 'capacity'), num(i, 'minutes'), num(i, 'mixers')),
    volumeYd: yards,
    trucks: (i) => truckLoads(yards(i), num(i, 'truck_yd')),
    // The wall's height over its rate of rise: the rate turned round.
    hoursAtRise: (i) => num(i, 'd_ft') / rateOfRise(num(i, 'R') * 40, 40),
    supplyYd: (i) => liftVolume(num(i, 'A_ft2'), num(i, 'R')) / 27,
    discharge: (i) => dischargeLimit(String(i['edition']) as DischargeEdition) ?? Number.NaN,
  });

  /** pumping-news-2022, found: C94-21 took the default away. */
  it('since 2021 the standard sets no time', () => expect(dischargeLimit('astm-c94-21')).toBeNull());

  it('a truck begun is a truck', () => expect([truckLoads(20, 10), truckLoads(20.1, 10), truckLoads(0.1, 10)]).toEqual([2, 3, 1]));
});
