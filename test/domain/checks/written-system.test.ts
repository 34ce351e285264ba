import { describe, expect, it } from '@jest/globals';
import { writtenSystem } from '../../../src/domain/checks/written-system.js';

describe('writtenSystem', () => {
  it.each([
    { written: '3.5 m', dimension: 'length', system: 'si' },
    { written: '3500mm', dimension: 'length', system: 'si' },
    { written: ' 350 CM ', dimension: 'length', system: 'si' },
    { written: '12 ft', dimension: 'length', system: 'us-customary' },
    { written: `12'-6"`, dimension: 'length', system: 'us-customary' },
    { written: `12'-6`, dimension: 'length', system: 'us-customary' },
    { written: '144″', dimension: 'length', system: 'us-customary' },
    { written: '144', dimension: 'length', system: null },
    { written: '1 m/h', dimension: 'rise', system: 'si' },
    { written: '1000 mm/hr', dimension: 'rise', system: 'si' },
    { written: '3 ft/h', dimension: 'rise', system: 'us-customary' },
    { written: '36 in/hour', dimension: 'rise', system: 'us-customary' },
    { written: '20C', dimension: 'temperature', system: 'si' },
    { written: '-5 °C', dimension: 'temperature', system: 'si' },
    { written: '70 deg F', dimension: 'temperature', system: 'us-customary' },
    { written: '23.5 kN/m³', dimension: 'density', system: 'si' },
    { written: '2400 kg/m3', dimension: 'density', system: 'si' },
    { written: '150 lb / cu ft', dimension: 'density', system: 'us-customary' },
    { written: '36 kPa', dimension: 'pressure', system: 'si' },
    { written: '0.036 N/mm2', dimension: 'pressure', system: 'si' },
    { written: '750 psf', dimension: 'pressure', system: 'us-customary' },
    { written: '5.2 psi', dimension: 'pressure', system: 'us-customary' },
    { written: '3 m', dimension: 'rise', system: null },
    { written: '', dimension: 'rise', system: null },
    { written: 'constructor', dimension: 'pressure', system: null },
    { written: 3, dimension: 'length', system: null },
    { written: null, dimension: 'pressure', system: null },
  ] as const)('$written of $dimension is $system', ({ written, dimension, system }) => expect(writtenSystem(written, dimension)).toBe(system));
});
