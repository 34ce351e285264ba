import { describe, expect, it } from '@jest/globals';
import { CALCULATORS, type CalculatorName } from '../../../src/modules/checks/checks.service.js';
import { OTHER_NAMES, underOtherNames } from '../../../src/domain/checks/other-names.js';

type Fields = Readonly<Record<string, unknown>>;

/** A question of each calculator with every field that it reads beside the others. */
const GOOD: readonly (readonly [CalculatorName, Fields])[] = [
  ['form-pressure', { method: 'aci-347', height: '12 ft', rise: '6 ft/h', concrete: '80 F', unitWeight: '150 pcf', cement: 'I', retarder: false, slump: '4 in' }],
  ['form-pressure', { method: 'ciria-108', height: '4 m', pourHeight: '4 m', rise: '2 m/h', concrete: '15 C', unitWeight: '25 kN/m3', section: 'wall', c2: 0.3 }],
  ['form-pressure', { method: 'din-18218', height: '6 m', rise: '2 m/h', class: 'F3', setting: '5 h', unitWeight: '25 kN/m3', concrete: '15 C' }],
  ['rise-limit', { rating: '900 psf', method: 'aci-347', height: '9 ft', concrete: '70 F', unitWeight: '150 pcf', cement: 'I', retarder: false, slump: '4 in' }],
  ['pour-plan', { planArea: '100 ft2', lift: '4 ft', pump: '40 yd3/h', truck: '10 yd3', dischargeLimit: '90 min', height: '9 ft', concrete: '70 F' }],
  ['bend-thrust', { pressure: '600 psf', core: '6 in', turn: '90', lift: '4 ft' }],
  ['hoop-tension', { pressure: '600 psf', core: '6 in', radius: '5 ft', lift: '4 ft' }],
  ['tee', { pressure: '600 psf', core: '6 in', courseHeight: '16 in', wireGauge: '9', strands: 2, safetyFactor: 2, bar: '#4', webSpacing: '8 in', barYield: '60 ksi' }],
  ['uplift', { pressure: '600 psf', lean: '4 in', length: '4 ft', wireGauge: '9', strands: 2, safetyFactor: 2 }],
  ['wind', { speed: '115 mph', exposure: 'B', height: '9 ft', duration: '5 weeks', wallLength: '40 ft', edition: 'asce-7-16', topography: 1 }],
  ['brace', { height: '9 ft', pressure: '20 psf', spacing: '6 ft', braceTop: '8 ft', braceFoot: '5 ft' }],
  ['timber-column', { section: '4x6', length: '6 ft', fcStar: '1600 psi', eMin: '580000 psi', c: 0.8 }],
  ['wall-bars', { nominal: '8 in', family: 'flat', height: '9 ft', backfill: '8 ft', soil: 'GW', edition: 'irc-2018' }],
  ['wall-bars', { nominal: '6 in', height: '10 ft', wind: '140 mph', exposure: 'B', bearing: 'side' }],
  ['basement-wall', { soil: '30 psf/ft', backfill: '8 ft', height: '8 ft' }],
  ['flexure', { As: '0.31 in2', d: '4 in', b: '12 in', fc: '3000 psi', fy: '60 ksi', phi: 0.9 }],
  ['flexure', { bar: '#5', spacing: '16 in', d: '4 in', fc: '3000 psi' }],
  ['lintel', { span: '6 ft', core: '6 in', depth: '16 in', loads: '1500 lb/ft', fc: '3000 psi', fy: '60 ksi', cover: '1.5 in' }],
  ['lap', { method: 'aci-318-general', bar: '#4', fc: '3000 psi', fy: '60 ksi', class: 'B', top: false, confinement: 2.5 }],
  ['evaporation', { air: '80 F', concrete: '87 F', humidity: '50 %', wind: '12 mph', lowBleed: false }],
  ['concrete-temperature', { aggregate: '1828 kg', aggregateTemperature: '37 C', cement: '360 kg', cementTemperature: '40 C', water: '123 kg', waterTemperature: '30 C', freeWater: '5 kg', ice: '20 kg' }],
  ['bar-shape', { standard: 'bs-8666', code: '11', diameter: '12 mm', dimensions: { A: '1000 mm', B: '300 mm' }, radius: '24 mm' }],
  ['height-stack', { height: '9 ft', courseHeight: '16 in', stripHeight: '4 in' }],
];

/** Units of no field here, or of none that this field measures. */
const WRONG_DIMENSION = ['8 lb/ft2/h', '8 s', '8 bananas'];
const answer = (name: CalculatorName, fields: Fields) => underOtherNames(name, CALCULATORS[name])(fields);
const refused = (name: CalculatorName, fields: Fields): readonly string[] => {
  const { ...given } = answer(name, fields);
  return given.ok ? [] : given.error.map(({ pointer }) => (pointer ?? '').split('/')[1] ?? '');
};
/** The number of a quantity turned round or made absurd, its unit kept. */
const numberOf = (value: unknown, to: (number: string) => string): unknown =>
  typeof value === 'string' && /^[\d.]+ /.test(value) ? value.replace(/^[\d.]+/, to) : typeof value === 'number' ? Number(to(String(value))) : undefined;
const temperature = (value: unknown): boolean => typeof value === 'string' && / [CF]$/.test(value);

describe.each(GOOD.map(([name, fields], index) => [`${name} ${index}`, name, fields] as const))('%s', (_, name, fields) => {
  it('answers what is good', () => expect(refused(name, fields)).toEqual([]));

  it('names every field that is of another dimension, a list, an object or nothing at all', () => {
    for (const field of Object.keys(fields))
      for (const bad of [...WRONG_DIMENSION, '', [], [1], field === 'dimensions' || field === 'loads' ? '' : {}, Number.NaN, 1e300, '\u0000'])
        expect([field, bad, refused(name, { ...fields, [field]: bad })]).toEqual([field, bad, expect.arrayContaining([field])]);
  });

  it('names every number that is negative or absurd', () => {
    for (const [field, value] of Object.entries(fields))
      for (const to of [(number: string) => `-${number}`, () => '99999999']) {
        const bad = numberOf(value, to);
        if (bad === undefined || (temperature(value) && String(bad).startsWith('-'))) continue;
        expect([field, bad, refused(name, { ...fields, [field]: bad })]).toEqual([field, bad, expect.arrayContaining([field])]);
      }
  });

  it('names every quantity that is sent without its unit', () => {
    for (const [field, value] of Object.entries(fields))
      if (typeof value === 'string' && /^[\d.]+ [^%]/.test(value))
        for (const bare of [8, '8']) expect([field, bare, refused(name, { ...fields, [field]: bare })]).toEqual([field, bare, expect.arrayContaining([field])]);
  });

  it('says of a field left out, or null, that it is wanted or what is taken for it', () => {
    for (const field of Object.keys(fields)) {
      const { [field]: _left, ...rest } = fields;
      for (const without of [rest, { ...rest, [field]: null }]) {
        const given = answer(name, without);
        const said = given.ok ? [...given.value.defaults, ...given.value.notes].join() : 'refused';
        expect([field, said]).toEqual([field, expect.stringMatching(/./)]);
      }
    }
  });

  it('refuses a field nobody knows, and has no answer to nothing', () => {
    expect(refused(name, { ...fields, heigth: '9 ft' })).toEqual(['heigth']);
    expect(refused(name, { ...fields, constructor: '9 ft' })).toEqual(['constructor']);
    expect(refused(name, {}).length).toBeGreaterThan(0);
  });
});

describe('other names of fields', () => {
  it.each(Object.entries(OTHER_NAMES).flatMap(([name, names]) => Object.entries(names).map(([other, own]) => [name as CalculatorName, other, own] as const)))(
    '%s reads %s as %s, and not both',
    (name, other, own) => {
      const [, fields] = GOOD.find(([each, given]) => each === name && Object.hasOwn(given, own)) ?? ['', { [own]: '8 bananas' }];
      const { [own]: value, ...rest } = fields as Record<string, unknown>;
      expect(answer(name, { ...rest, [other]: value })).toEqual(value === '8 bananas' ? expect.objectContaining({ ok: false }) : answer(name, fields));
      expect(refused(name, { ...rest, [other]: '8 bananas' })).toContain(other);
      expect(refused(name, { ...fields, [other]: value })).toEqual([other]);
    },
  );
});

/** A name cut short is read where one alone can be meant. */
describe('names in other words', () => {
  const bars = { nominal: '8 in', height: '9 ft', backfill: '8 ft', soil: 'GW' };
  it.each([
    ['wall-bars', { ...bars, edition: '2018' }, { ...bars, edition: 'irc-2018' }],
    ['wall-bars', { ...bars, nominal: '6 in', backfill: '5 ft', family: 'waffle' }, { ...bars, nominal: '6 in', backfill: '5 ft', family: 'waffle-grid' }],
    ['bar-shape', { standard: 'BS 8666', code: '00', diameter: '12 mm', dimensions: { A: '1 m' } }, { standard: 'bs-8666', code: '00', diameter: '12 mm', dimensions: { A: '1 m' } }],
    ['tee', { pressure: '600 psf', core: '6 in', courseHeight: '16 in', wire: '16 ga', strands: 'double', bar: '4' }, { pressure: '600 psf', core: '6 in', courseHeight: '16 in', wireGauge: 16, strands: 2, bar: '#4' }],
  ] as const)('%s', (name, written, meant) => {
    expect(answer(name, written).ok).toBe(true);
    expect(answer(name, written)).toEqual(answer(name, meant));
  });

  it('one that can mean two is refused, and no mark of a number is dropped', () => {
    for (const bar of ['-4', '1.1', '1 0']) expect([bar, refused('lap', { method: 'irc', bar, fy: '60 ksi' })]).toEqual([bar, ['bar']]);
    expect(refused('wall-bars', { ...bars, edition: 'irc' })).toEqual(['edition']);
    expect(refused('lap', { method: 'aci-318', bar: '#4', fc: '3000 psi' })).toEqual(['method']);
  });
});
