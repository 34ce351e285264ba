import { describe, expect, it } from '@jest/globals';
import { concreteShear } from '../../src/domain/engineering/aci-318-14/concrete-shear.js';
import { flexuralStrength } from '../../src/domain/engineering/aci-318-14/flexural-strength.js';
import { generalDevelopment } from '../../src/domain/engineering/aci-318-14/general-development.js';
import { simplifiedDevelopment } from '../../src/domain/engineering/aci-318-14/simplified-development.js';
import { steelForMoment } from '../../src/domain/engineering/aci-318-14/steel-for-moment.js';
import { stressBlockDepth } from '../../src/domain/engineering/aci-318-14/stress-block-depth.js';
import { tensionLap } from '../../src/domain/engineering/aci-318-14/tension-lap.js';
import { INCH_BARS, type InchBarName } from '../../src/domain/engineering/astm-a615/bars.js';
import { itIsAsPublished, num, publishedRows, type Inputs } from './published-rows.js';

const section = (i: Inputs) => [num(i, 'As_in2'), num(i, 'd_in'), num(i, 'b_in'), num(i, 'fc_psi'), num(i, 'fy_psi'), num(i, 'phi')] as const;
const bar = (i: Inputs) => INCH_BARS[i['bar'] as InchBarName];
const simple = (i: Inputs, top = false, close = false): number => simplifiedDevelopment(bar(i).diameterIn, num(i, 'fc_psi'), num(i, 'fy_psi'), top, close);
const general = (i: Inputs): number => generalDevelopment(bar(i).diameterIn, num(i, 'fc_psi'), num(i, 'fy_psi'), false, num(i, 'confinement'));

const ASKED: Readonly<Record<string, (inputs: Inputs) => number>> = {
  flexuralStrength: (i) => flexuralStrength(...section(i)),
  flexuralStrengthFtLb: (i) => flexuralStrength(...section(i)) / 12,
  stressBlockDepth: (i) => stressBlockDepth(num(i, 'As_in2'), num(i, 'b_in'), num(i, 'fc_psi'), num(i, 'fy_psi')),
  shearStress: (i) => 0.75 * concreteShear(1, 1, num(i, 'fc_psi'), 1),
  spacingForMoment: (i) =>
    (12 * bar(i).areaIn2) / (steelForMoment(num(i, 'Mu_ftlb') * 12, num(i, 'd_in'), num(i, 'b_in'), num(i, 'fc_psi'), 60_000, 0.9) ?? Number.NaN),
  simplifiedDevelopment: (i) => Math.max(12, simple(i)),
  closeDevelopment: (i) => Math.max(12, simple(i, false, true)),
  simplifiedLapB: (i) => tensionLap(simple(i), 'B'),
  simplifiedLapBUp: (i) => Math.ceil(tensionLap(simple(i), 'B') - 1e-9),
  topLapB: (i) => tensionLap(simple(i, true), 'B'),
  generalLapB: (i) => tensionLap(general(i), 'B'),
};

describe('strength of sections', () => {
  itIsAsPublished(publishedRows('aci-318/flexure-and-shear'), ASKED);
});
describe('development lengths of the design aid', () => {
  itIsAsPublished(publishedRows('aci-318/development'), ASKED);
});
describe('laps of the chart and of the sheet', () => {
  itIsAsPublished(publishedRows('aci-318/laps'), ASKED);
});
describe('laps worked from the formula', () => {
  itIsAsPublished(publishedRows('aci-318/laps-regression'), ASKED);
});

/** Nominal bars, read in a transcription of the standard's table: area and perimeter are those of the printed diameter. */
describe('nominal bars', () => {
  it.each([
    { name: '#3', area: '0.11', perimeter: '1.178', weight: 0.376 },
    { name: '#4', area: '0.20', perimeter: '1.571', weight: 0.668 },
    { name: '#5', area: '0.31', perimeter: '1.963', weight: 1.043 },
    { name: '#6', area: '0.44', perimeter: '2.356', weight: 1.502 },
    { name: '#7', area: '0.60', perimeter: '2.749', weight: 2.044 },
    { name: '#8', area: '0.79', perimeter: '3.142', weight: 2.67 },
    { name: '#9', area: '1.00', perimeter: '3.544', weight: 3.4 },
    { name: '#10', area: '1.27', perimeter: '3.990', weight: 4.303 },
    { name: '#11', area: '1.56', perimeter: '4.430', weight: 5.313 },
  ] as const)('$name is $area in2, $weight lb/ft', ({ name, area, perimeter, weight }) => {
    const { diameterIn, areaIn2, lbPerFt } = INCH_BARS[name];
    expect([areaIn2, lbPerFt]).toEqual([Number(area), weight]);
    expect(Math.abs(Math.PI * diameterIn - Number(perimeter))).toBeLessThanOrEqual(0.0005 + 1e-9);
    expect(Math.abs((Math.PI * diameterIn ** 2) / 4 - areaIn2)).toBeLessThan(0.006);
    // Steel weighs 490 pcf: the bar's weight is that of its area.
    expect(Math.abs((areaIn2 / 144) * 490 - lbPerFt)).toBeLessThan(0.03);
  });
});
