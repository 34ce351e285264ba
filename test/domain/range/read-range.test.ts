import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { readRange } from '../../../src/domain/range/read-range.js';

const heron = (): any => JSON.parse(readFileSync('shared/samples/heron-16.range.json', 'utf8'));
const errorsOf = (change: (range: any) => void) => {
  const range = heron();
  change(range);
  const result = readRange(range);
  if (result.ok) throw new Error('the range was taken');
  return result.error;
};
const readHeron = () => {
  const result = readRange(heron());
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};

describe('the demo range', () => {
  const range = readHeron();

  it('has the figures of its file in nanometres', () => {
    expect(range).toMatchObject({ code: 'HERON-16', version: 1, inForceFrom: '2026-01-01', interlock: 'module', reversible: true });
    expect([range.courseHeight, range.formLength, range.cutModule, range.panel, range.firstWeb, range.stripHeight]).toEqual([16, 48, 1, 2.5, 4, 3].map(inches));
    expect([...range.cores.keys()]).toEqual(['4', '6', '8', '10']);
    expect(range.cores.get('10')).toEqual({ code: '10', width: inches(10), family: 'flat', ratedPressurePsf: 700 });
    expect(range.closure).toEqual({ prefix: 'EC', thickness: inches(2.5), height: inches(16) });
    expect([range.straightPrefix, range.stripPrefix]).toEqual(['ST', 'HS']);
  });

  it('tries fixed corner units before the hinged one, with legs by core', () => {
    expect(range.corners.map(({ kind, minTurn, maxTurn, hands }) => [kind, minTurn, maxTurn, hands])).toEqual([
      ['corner', 90, 90, 'two-skus'],
      ['corner-pair', 45, 45, 'pair'],
      ['corner-hinged', 10, 100, 'either'],
    ]);
    expect(range.corners[0]?.legs.get('6')).toEqual({ long: inches(37.5), short: inches(21.5) });
    expect(range.corners[2]?.legs.get('10')).toEqual({ long: inches(28), short: inches(20) });
  });

  it('turns parameters into lengths and plain numbers', () => {
    expect(range.parameters).toMatchObject({
      stackTolerance: inches(0.25), braceSpacing: inches(72), turnToleranceDeg: 0.5, turnAcuteFromDeg: 100, pumpLossYd3: 0.5, orderStepYd3: 0.25, gableSteepFromDeg: 30,
      stackPrefers: 'rip', formKerf: 0, teePinBar: '#4', holdDownTieBy: 'cable-tie',
    });
  });

  it('adds common practice for the tee bar where a range does not say', () => {
    const plain = heron();
    delete plain.parameters.teePinBar;
    expect(readRange(plain)).toEqual({ ok: true, value: range });
  });

  it('adds common practice for edges, curves, tops, gables, corners and jambs where a range does not say', () => {
    const told = {
      taperEdgeBy: 'strap', radiusBandBy: 'strap', topProtectBy: 'cover', topProtectFaces: 2, gableBoardWidth: inches(3.5), cornerBraceVerticals: 2, buckDiagonals: 2, braceTop: inches(96), braceFoot: inches(72),
    };
    expect(Object.keys(heron().parameters)).not.toEqual(expect.arrayContaining([expect.stringMatching(new RegExp(`^(${Object.keys(told).join('|')})$`))]));
    expect(range.parameters).toMatchObject(told);
  });

  it('reads them where a range does say', () => {
    const told = heron();
    told.parameters.radiusBandBy = { value: 'tape', basis: "supplier's test" };
    told.parameters.gableBoardWidth = { value: 5.5, unit: 'in', basis: 'common practice' };
    told.parameters.cornerBraceVerticals = { value: 3, unit: 'verticals', basis: 'common practice' };
    expect(readRange(told)).toMatchObject({ ok: true, value: { parameters: { radiusBandBy: 'tape', gableBoardWidth: inches(5.5), cornerBraceVerticals: 3 } } });
  });

  it('is the same range in millimetres', () => {
    const metric = heron();
    const toMm = (value: number): number => Math.round(value * 25.4 * 1e6) / 1e6;
    metric.units = 'mm';
    delete metric.unitsPerCore.comment;
    for (const key of ['courseHeight', 'formLength', 'cutModule', 'minPiece', 'minStagger', 'panel', 'webSpacing', 'firstWeb']) metric[key] = toMm(metric[key]);
    metric.strip.height = toMm(metric.strip.height);
    for (const core of metric.cores) core.width = toMm(core.width);
    for (const unit of Object.values<any>(metric.unitsPerCore)) {
      for (const key of ['length', 'thickness', 'height', 'projection']) if (unit[key]) unit[key] = toMm(unit[key]);
      for (const code of Object.keys(unit.legs ?? {})) unit.legs[code] = unit.legs[code].map(toMm);
      for (const face of Object.values<any>(unit.faces ?? {})) face.seatGain = toMm(face.seatGain);
    }
    expect(readRange(metric)).toEqual({ ok: true, value: range });
  });
});

describe('ranges that are refused', () => {
  it.each<[string, (range: any) => void, string, string]>([
    ['legs that step off the cut module', (r) => (r.unitsPerCore.corner.legs['6'] = [37.5, 21]), '/unitsPerCore/corner/legs/6', 'a multiple of the cut module (1")'],
    ['legs that step less than the stagger', (r) => (r.unitsPerCore['corner-pair'].legs['6'] = [24, 17]), '/unitsPerCore/corner-pair/legs/6', 'at least the stagger (8")'],
    ['legs that do not reach past the mitre', (r) => (r.unitsPerCore['corner-hinged'].legs['10'] = [16, 8]), '/unitsPerCore/corner-hinged/legs/10', 'longer than the mitre'],
    ['legs of a core that is none', (r) => (r.unitsPerCore.corner.legs['7'] = [37.5, 21.5]), '/unitsPerCore/corner/legs/7', '4, 6, 8, 10'],
    ['a form off the cut module', (r) => ((r.formLength = 48.5), (r.unitsPerCore.straight.length = 48.5), (r.unitsPerCore.strip.length = 48.5)), '/formLength', 'a multiple of the cut module'],
    ['a straight form of another length', (r) => (r.unitsPerCore.straight.length = 40), '/unitsPerCore/straight/length', 'the form length (48")'],
    ['a parameter of unknown basis', (r) => (r.parameters.minRip.basis = 'a friend'), '/parameters/minRip/basis', 'a basis'],
    ['a parameter without a basis', (r) => delete r.parameters.minRip.basis, '/parameters/minRip/basis', 'a basis'],
    ['a parameter that is missing', (r) => delete r.parameters.minRip, '/parameters/minRip', 'missing'],
    ['a parameter nobody knows', (r) => (r.parameters.minRipp = r.parameters.minRip), '/parameters/minRipp', 'no such key'],
    ['a parameter in a wrong unit', (r) => (r.parameters.minRip.unit = 'psi'), '/parameters/minRip/unit', 'a unit: in, ft, mm or m'],
    ['a share above one', (r) => (r.parameters.spareForms.value = 2), '/parameters/spareForms/value', 'from 0 to 1'],
    ['a tee bar that is no material', (r) => (r.parameters.teePinBar.value = '#9'), '/parameters/teePinBar', '#9 is none'],
    ['two cores of one code', (r) => r.cores.push(r.cores[0]), '/cores/4/code', 'no other core'],
    ['two materials of one sku', (r) => r.materials.push(r.materials[0]), '/materials/9/sku', 'no other material'],
    ['a strip as high as a course', (r) => (r.strip.height = 16), '/strip/height', 'less than a course'],
    ['a length of zero', (r) => (r.panel = 0), '/panel', 'more than zero'],
    ['a length that is text without sense', (r) => (r.panel = `12'-14"`), '/panel', `13'-2"`],
    ['an unknown unit', (r) => (r.units = 'yd'), '/units', 'in, ft, mm or m'],
    ['another format', (r) => (r.format = 'wallcourse/prices@1'), '/format', 'wallcourse/range@1'],
    ['a date that is none', (r) => (r.inForceFrom = '2026-02-30'), '/inForceFrom', 'a date'],
    ['a hinge without a span', (r) => (r.unitsPerCore['corner-hinged'].minTurn = 100), '/unitsPerCore/corner-hinged/minTurn', 'less than maxTurn'],
  ])('%s', (_name, change, pointer, fix) => {
    const errors = errorsOf(change);
    expect(errors.map((error) => error.pointer)).toContain(pointer);
    expect(errors.find((error) => error.pointer === pointer)?.fix).toContain(fix);
  });

  it('tells all errors of the shape at once', () => {
    const errors = errorsOf((range) => ((range.panel = -1), (range.cutModule = 'x'), (range.code = '')));
    expect(errors.map(({ pointer }) => pointer)).toEqual(['/code', '/cutModule', '/panel']);
  });

  it.each([null, undefined, 3, 'range', [], {}])('%p is no range', (value) => expect(readRange(value).ok).toBe(false));
});
