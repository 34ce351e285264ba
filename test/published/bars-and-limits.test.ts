import { describe } from '@jest/globals';
import { EVAPORATION_THRESHOLD } from '../../src/domain/engineering/aci-305r/evaporation-limits.js';
import { INCH_BARS, type InchBarName } from '../../src/domain/engineering/astm-a615/bars.js';
import { liquidHead } from '../../src/domain/engineering/aci-347-04/liquid-head.js';
import { METRIC_BARS, type MetricBarName } from '../../src/domain/engineering/csa-g30-18/bars.js';
import { metricLap } from '../../src/domain/engineering/obc-2024/lap-length.js';
import { MINIMUM_LOADS } from '../../src/domain/engineering/hanna-formwork/minimum-loads.js';
import { prescriptiveLap } from '../../src/domain/engineering/irc-2018/lap-length.js';
import { WARMEST_CONCRETE_F } from '../../src/domain/engineering/aci-347-04/limits.js';
import { itIsAsPublished, num, publishedRows, type Inputs } from './published-rows.js';

const inch = (i: Inputs) => INCH_BARS[i['bar'] as InchBarName];
const metric = (i: Inputs) => METRIC_BARS[i['bar'] as MetricBarName];
const system = (i: Inputs) => i['system'] as 'us-customary' | 'si';

describe('nominal bars', () => {
  itIsAsPublished([...publishedRows('astm-a615/bars'), ...publishedRows('csa-g30-18/bars')], {
    inchDiameter: (i) => inch(i).diameterIn,
    inchArea: (i) => inch(i).areaIn2,
    inchWeight: (i) => inch(i).lbPerFt,
    inchPerimeter: (i) => Math.PI * inch(i).diameterIn,
    metricDiameter: (i) => metric(i).diameterMm,
    metricArea: (i) => metric(i).areaMm2,
    metricWeight: (i) => metric(i).kgPerM,
  });
});

describe('laps of tables', () => {
  itIsAsPublished([...publishedRows('irc-2018/laps'), ...publishedRows('obc-2024/laps')], {
    codeLap: (i) => prescriptiveLap(String(i['bar']), num(i, 'fy')) ?? Number.NaN,
    metricLap: (i) => metricLap(String(i['bar'])) ?? Number.NaN,
  });
});

describe('weights, least loads and thresholds', () => {
  itIsAsPublished([...publishedRows('irc-2018/wall-weights'), ...publishedRows('hanna-formwork/minimum-loads'), ...publishedRows('aci-305r/thresholds')], {
    weight: (i) => liquidHead(150, num(i, 't_in') / 12),
    leastPressure: (i) => MINIMUM_LOADS[system(i)].pressure,
    leastTopLoad: (i) => MINIMUM_LOADS[system(i)].topLoad,
    plain: (i) => EVAPORATION_THRESHOLD[system(i)].plain,
    lowBleed: (i) => EVAPORATION_THRESHOLD[system(i)].lowBleed,
    warmest: () => WARMEST_CONCRETE_F,
  });
});
