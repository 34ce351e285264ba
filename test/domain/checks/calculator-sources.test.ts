import { describe, expect, it } from '@jest/globals';
import { bendThrustCalculator } from '../../../src/domain/checks/bend-thrust-calculator.js';
import { braceCalculator } from '../../../src/domain/checks/brace-calculator.js';
import { citation } from '../../../src/domain/evidence/citation.js';
import { concreteTemperatureCalculator } from '../../../src/domain/checks/concrete-temperature-calculator.js';
import { evaporationCalculator } from '../../../src/domain/checks/evaporation-calculator.js';
import { formPressureCalculator } from '../../../src/domain/checks/form-pressure-calculator.js';
import { hoopTensionCalculator } from '../../../src/domain/checks/hoop-tension-calculator.js';
import { pourPlanCalculator } from '../../../src/domain/checks/pour-plan-calculator.js';
import { teeCalculator } from '../../../src/domain/checks/tee-calculator.js';
import { timberColumnCalculator } from '../../../src/domain/checks/timber-column-calculator.js';
import { upliftCalculator } from '../../../src/domain/checks/uplift-calculator.js';
import { windCalculator } from '../../../src/domain/checks/wind-calculator.js';
import { answerOf } from './asked.js';
import type { Calculator } from '../../../src/domain/checks/calculator-answer.js';

type Row = readonly [name: string, calculator: Calculator, fields: Readonly<Record<string, unknown>>];

const TEE = { pressure: '600 psf', core: '6 in', courseHeight: '16 in', bar: '#4' };
const WIND = { speed: '115 mph', exposure: 'C', height: '9 ft', duration: '4 weeks', wallLength: '40 ft' };
const BRACE = { spacing: '6 ft', braceTop: '8 ft', braceFoot: '6 ft', capacity: '2000 lb' };
const MIX = { aggregate: '1828 kg', aggregateTemperature: '37 C', cement: '360 kg', cementTemperature: '40 C', water: '123 kg', waterTemperature: '30 C' };
const COLUMN = { section: '4x4', fcStar: '1650 psi', eMin: '580000 psi' };
const POUR = { planArea: '80 ft2', lift: '4 ft', pump: '6 yd3/h', truck: '10 yd3', height: '10 ft' };
const CIRIA = { method: 'ciria-108', height: '4 m', rise: '2 m/h' };
const DIN = { method: 'din-18218', height: '4 m', class: 'F3', setting: '5 h' };

/** Each within its method and, where it has limits, past one. */
const ROWS: readonly Row[] = [
  ['bend-thrust', bendThrustCalculator, { pressure: '600 psf', core: '6 in', turn: '90', lift: '4 ft' }],
  ['hoop-tension', hoopTensionCalculator, { pressure: '600 psf', core: '6 in', radius: '5 ft', lift: '4 ft' }],
  ['tee, printed wire', teeCalculator, { ...TEE, wireGauge: '9' }],
  ['tee, thin wire', teeCalculator, { ...TEE, wireGauge: '16' }],
  ['uplift', upliftCalculator, { pressure: '600 psf', lean: '45 deg', height: '1 ft' }],
  ['wind', windCalculator, WIND],
  ['wind, 2022', windCalculator, { ...WIND, edition: 'asce-7-22' }],
  ['wind, too long', windCalculator, { ...WIND, duration: '6 years' }],
  ['brace', braceCalculator, { ...BRACE, height: '9 ft', pressure: '20 psf' }],
  ['brace by wind', braceCalculator, { ...BRACE, ...WIND }],
  ['timber-column', timberColumnCalculator, { ...COLUMN, length: '6 ft' }],
  ['timber-column, slender', timberColumnCalculator, { ...COLUMN, length: '16 ft' }],
  ['evaporation', evaporationCalculator, { air: '80 F', concrete: '87 F', humidity: '50 %', wind: '12 mph' }],
  ['evaporation, off the chart', evaporationCalculator, { air: '10 F', concrete: '120 F', humidity: '50 %', wind: '40 mph' }],
  ['concrete-temperature', concreteTemperatureCalculator, MIX],
  ['concrete-temperature, frozen', concreteTemperatureCalculator, { ...MIX, ice: '400 kg' }],
  ['pour-plan', pourPlanCalculator, { ...POUR, concrete: '70 F' }],
  ['pour-plan, too cold', pourPlanCalculator, { ...POUR, concrete: '20 F' }],
  ['ciria-108', formPressureCalculator, { ...CIRIA, concrete: '15 C' }],
  ['ciria-108, too cold', formPressureCalculator, { ...CIRIA, concrete: '1 C' }],
  ['din-18218', formPressureCalculator, { ...DIN, rise: '2 m/h', concrete: '10 C' }],
  ['din-18218, too fast', formPressureCalculator, { ...DIN, rise: '9 m/h' }],
];
/** What no publication stands behind. */
const UNPUBLISHED = ['statics', 'geometry', 'as asked'];

describe('sources of the calculators', () => {
  it.each(ROWS)('%s: every step, finding and answer has one that is known', (_, calculator, fields) => {
    const { source, trace, findings } = answerOf(calculator, fields);
    const sources = [source, ...trace.map((step) => step.source), ...findings.map((found) => found.source)];
    expect(sources.filter((text) => citation(text).key === null && !UNPUBLISHED.includes(text))).toEqual([]);
  });

  it.each(ROWS)('%s: every number of a finding ends in its unit, or is a ratio', (_, calculator, fields) => {
    for (const { numbers } of answerOf(calculator, fields).findings) {
      for (const [key, value] of Object.entries(numbers)) {
        if (typeof value === 'string') continue;
        expect(key).toMatch(/(F|Mps|Hours|Years|FtPerH|KnPerM3)$|^(slenderness|limit)$/);
      }
    }
  });

  it.each(ROWS)('%s: every value of the trace is a number, and what is substituted carries no gap', (_, calculator, fields) => {
    for (const { value, substituted } of answerOf(calculator, fields).trace) {
      expect(Number.isFinite(value)).toBe(true);
      expect(substituted).not.toMatch(/NaN|undefined|Infinity|null/);
    }
  });
});
