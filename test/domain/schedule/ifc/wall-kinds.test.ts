import { describe, expect, it } from '@jest/globals';
import { IfcFile, type Ref } from '../../../support/ifc-files.js';
import { readIfc, scheduleOf } from '../../../support/opened-model.js';

const MM = 1_000_000;
/** 11 in, 6 in and 2 1/2 in in millimetres: T, core and panel of the demo range. */
const [FORM, CORE, PANEL] = [279.4, 152.4, 63.5];
const FOAM_CONCRETE_FOAM = [['EPS', PANEL], ['Concrete 4000 psi', CORE], ['EPS', PANEL]] as const;

function one(build: (file: IfcFile, storey: Ref) => unknown): IfcFile {
  const file = new IfcFile('mm');
  build(file, file.storey('S1', 0));
  return file;
}
const swept = (file: IfcFile, solid: Ref): Ref => file.shape('Body', 'SweptSolid', solid);
const wallOf = async (build: (file: IfcFile, storey: Ref) => unknown) => {
  const schedule = await scheduleOf(one(build));
  return { wall: schedule.walls[0]!, schedule };
};

describe('a swept wall', () => {
  it.each(['IFCWALL', 'IFCWALLSTANDARDCASE'])('of kind %s has the ends of its rectangle on the middle of its thickness', async (kind) => {
    const { wall } = await wallOf((file, storey) => file.wall({ kind, storey, body: swept(file, file.extruded(file.rectangle(4000, FORM), 2600)) }));
    expect(wall).toMatchObject({ core: '6', from: { x: 0, y: 0 }, to: { x: 4000 * MM, y: 0 }, length: 4000 * MM, height: 2600 * MM });
  });

  it('of any four corners is the same, extra points on its faces make no difference, nor does the way round', async () => {
    const corners = [[0, 0], [1500, 0], [4000, 0], [4000, FORM], [700, FORM], [0, FORM]];
    for (const outline of [corners, [...corners].reverse()]) {
      const { wall } = await wallOf((file, storey) => file.wall({ storey, body: swept(file, file.extruded(file.outline(outline), 2600)) }));
      expect(wall).toMatchObject({ core: '6', from: { x: 0, y: 139.7 * MM }, to: { x: 4000 * MM, y: 139.7 * MM } });
    }
  });

  it('mitred at its ends runs to the middle of each, which is where the lines cross, and it is told', async () => {
    const { wall, schedule } = await wallOf((file, storey) => file.wall({ storey, body: swept(file, file.extruded(file.outline([[0, 0], [4000, 0], [4000 - FORM, FORM], [FORM, FORM]]), 2600)) }));
    expect(wall).toMatchObject({ from: { x: 139.7 * MM }, to: { x: (4000 - 139.7) * MM } });
    expect(schedule.noted).toMatchObject([{ kind: 'IfcWall', name: 'W1', note: expect.stringContaining('not cut square') }]);
  });

  it('drawn downward or upside down stands where it is', async () => {
    const { wall } = await wallOf((file, storey) => file.wall({ storey, body: swept(file, file.extruded(file.rectangle(4000, FORM), 2600, { origin: [0, 0, 2600] }, [0, 0, -1])) }));
    expect(wall).toMatchObject({ base: 0, height: 2600 * MM, length: 4000 * MM });
  });

  it('shorter than it is thick runs along its own x', async () => {
    const { wall } = await wallOf((file, storey) => file.wall({ storey, body: swept(file, file.extruded(file.rectangle(200, FORM), 2600)) }));
    expect(wall).toMatchObject({ core: '6', length: 200 * MM });
  });

  it('of the concrete alone is as thick as a core', async () => {
    const { wall } = await wallOf((file, storey) => file.wall({ storey, body: swept(file, file.extruded(file.rectangle(4000, CORE), 2600)) }));
    expect(wall).toMatchObject({ core: '6', from: { x: 0, y: 0 } });
  });
});

describe('layers', () => {
  const layered = (file: IfcFile, storey: Ref, layers: readonly (readonly [string, number])[], usage: Parameters<IfcFile['layers']>[1] = null) => {
    const total = layers.reduce((sum, [, thickness]) => sum + thickness, 0);
    file.wall({ storey, material: file.layers(layers, usage), body: swept(file, file.extruded(file.rectangle(4000, total), 2600)) });
  };

  it('name the core by the one that says concrete', async () => {
    expect((await wallOf((file, storey) => layered(file, storey, FOAM_CONCRETE_FOAM))).wall.core).toBe('6');
  });

  it('name it by the middle one of three', async () => {
    expect((await wallOf((file, storey) => layered(file, storey, [['a', PANEL], ['b', 203.2], ['c', PANEL]]))).wall.core).toBe('8');
  });

  it('a single one is a core, or a core with its two panels', async () => {
    expect((await wallOf((file, storey) => layered(file, storey, [['Wall', CORE]]))).wall.core).toBe('6');
    expect((await wallOf((file, storey) => layered(file, storey, [['Wall', 254 + 127]]))).wall.core).toBe('10');
  });

  it.each([['.POSITIVE.', 1], ['.NEGATIVE.', -1]] as const)('with brick on one side move the line to the middle of the core (%s)', async (sense, side) => {
    // Body 90 + 63.5 + 152.4 + 63.5 = 369.4 about y = 0: the core's middle is 90 + 63.5 + 76.2 from the first face, 45 from the body's middle.
    const { wall } = await wallOf((file, storey) => layered(file, storey, [['Brick', 90], ...FOAM_CONCRETE_FOAM], { offset: -184.7 * side, sense }));
    expect(wall).toMatchObject({ core: '6', from: { x: 0, y: 45 * side * MM }, to: { y: 45 * side * MM } });
  });

  it.each([
    ['brick on one side and no usage', [['Brick', 90], ...FOAM_CONCRETE_FOAM], 'nothing says which side is which'],
    ['two of concrete', [['concrete', 100], ['EPS', 50], ['concrete', 100]], '2 of its layers say concrete'],
    ['four that say nothing', [['a', 10], ['b', 20], ['c', 30], ['d', 40]], 'none of its 4 layers says concrete'],
    ['a thickness that is no core', [['EPS', PANEL], ['Concrete', 150], ['EPS', PANEL]], 'a thickness of 150 mm is no core of the range: 4 (101.6 mm), 6 (152.4 mm), 8 (203.2 mm), 10 (254 mm)'],
  ] as const)('leave the wall out for %s, with its GlobalId and the reason', async (_, layers, reason) => {
    const file = one((each, storey) => {
      layered(each, storey, layers);
      each.wall({ name: 'W2', storey, at: { origin: [0, 9000, 0] }, body: swept(each, each.extruded(each.rectangle(4000, FORM), 2600)) });
    });
    const { walls, skipped } = await scheduleOf(file);
    expect(walls.map(({ mark }) => mark)).toEqual(['W2']);
    expect(skipped).toMatchObject([{ globalId: expect.stringMatching(/^W1/), kind: 'IfcWall', name: 'W1', reason: expect.stringContaining(reason) }]);
  });

  it('within 1 mm of a core is that core', async () => {
    expect((await wallOf((file, storey) => layered(file, storey, [['EPS', 64], ['Concrete', 152], ['EPS', 64]]))).wall.core).toBe('6');
  });
});

describe('a wall with only an axis', () => {
  const height = (file: IfcFile, wall: Ref, value: number): void => {
    const quantity = file.add('IFCQUANTITYLENGTH', "'Height'", null, null, value, null);
    const set = file.add('IFCELEMENTQUANTITY', "'quantity00000000000001'", null, "'Qto_WallBaseQuantities'", null, null, [quantity]);
    file.add('IFCRELDEFINESBYPROPERTIES', "'properties000000000001'", null, null, null, [wall], set);
  };
  const axis = (file: IfcFile, curve: Ref): Ref => file.shape('Axis', 'Curve2D', curve);

  it('stands on the middle of its concrete layer, as high as its quantity says', async () => {
    const { wall, schedule } = await wallOf((file, storey) =>
      height(file, file.wall({ storey, axis: axis(file, file.polyline([[0, 0], [4000, 0]])), material: file.layers(FOAM_CONCRETE_FOAM, { offset: -139.7 }) }), 2600));
    expect(wall).toMatchObject({ core: '6', from: { x: 0, y: 0 }, length: 4000 * MM, height: 2600 * MM });
    expect(schedule.noted).toEqual([]);
  });

  it.each([['.POSITIVE.', 1], ['.NEGATIVE.', -1]] as const)('on its face lies half its thickness aside (%s)', async (sense, side) => {
    const { wall } = await wallOf((file, storey) =>
      height(file, file.wall({ storey, axis: axis(file, file.polyline([[0, 0], [4000, 0]])), material: file.layers(FOAM_CONCRETE_FOAM, { offset: 0, sense }) }), 2600));
    expect(wall.from).toEqual({ x: 0, y: side * 139.7 * MM });
  });

  it('with layers and no usage is taken for the middle, and that is told', async () => {
    const { wall, schedule } = await wallOf((file, storey) =>
      height(file, file.wall({ storey, axis: axis(file, file.polyline([[0, 0], [4000, 0]])), material: file.layers(FOAM_CONCRETE_FOAM) }), 2600));
    expect(wall.from).toEqual({ x: 0, y: 0 });
    expect(schedule.noted?.[0]?.note).toContain('taken for the middle of its core');
  });

  it.each([
    ['without a height', true, 'no quantity or property states its height'],
    ['without layers', false, 'no layers of its material'],
  ])('%s is left out', async (_, layers, reason) => {
    const read = await readIfc(one((file, storey) => file.wall({ storey, axis: axis(file, file.polyline([[0, 0], [4000, 0]])), material: layers ? file.layers(FOAM_CONCRETE_FOAM) : null })));
    expect(read).toMatchObject({ ok: false, error: { code: 'invalid', errors: [{ pointer: '/walls', fix: 'a model with a wall that can be read: of this one 1 element is left out' }, { read: expect.stringMatching(/^W1/), fix: expect.stringContaining(reason) }] } });
  });

  /** A quarter circle of 5 m about (0, 5000): by its angles, by its points, by three points on it. */
  const half = Math.SQRT1_2;
  const curves: [string, (file: IfcFile) => Ref, 'left' | 'right', readonly number[]][] = [
    ['trimmed by angles', (file) => file.add('IFCTRIMMEDCURVE', file.add('IFCCIRCLE', file.add('IFCAXIS2PLACEMENT2D', file.point(0, 5000), null), 5000), ['IFCPARAMETERVALUE(270.)'], ['IFCPARAMETERVALUE(0.)'], '.T.', '.PARAMETER.'), 'left', [0, 0]],
    ['trimmed by points', (file) => file.add('IFCTRIMMEDCURVE', file.add('IFCCIRCLE', file.add('IFCAXIS2PLACEMENT2D', file.point(0, 5000), null), 5000), [file.point(0, 0)], [file.point(5000, 5000)], '.T.', '.CARTESIAN.'), 'left', [0, 0]],
    ['trimmed the other way', (file) => file.add('IFCTRIMMEDCURVE', file.add('IFCCIRCLE', file.add('IFCAXIS2PLACEMENT2D', file.point(0, 5000), null), 5000), ['IFCPARAMETERVALUE(0.)'], ['IFCPARAMETERVALUE(270.)'], '.F.', '.PARAMETER.'), 'right', [5000, 5000]],
    ['through three points', (file) => file.add('IFCINDEXEDPOLYCURVE', file.add('IFCCARTESIANPOINTLIST2D', [[0, 0], [5000 * half, 5000 - 5000 * half], [5000, 5000]]), ['IFCARCINDEX((1,2,3))'], '.F.'), 'left', [0, 0]],
  ];
  it.each(curves)('that is an arc %s turns as it is drawn', async (_, curve, turns, [x = 0, y = 0]) => {
    const { wall } = await wallOf((file, storey) => height(file, file.wall({ storey, axis: axis(file, curve(file)), material: file.layers(FOAM_CONCRETE_FOAM) }), 2600));
    expect(wall.arc).toEqual({ radius: 5000 * MM, turns });
    expect(Math.abs(wall.length - (5000 * MM * Math.PI) / 2)).toBeLessThan(1);
    expect(Math.hypot(wall.from.x - x * MM, wall.from.y - y * MM)).toBeLessThan(2_000);
  });
});

describe('a wall that is part of a ring', () => {
  it('has the radius of the middle of its thickness', async () => {
    const [outer, inner] = [5139.7, 4860.3];
    const at = (radius: number, degrees: number): readonly number[] => [radius * Math.cos((degrees * Math.PI) / 180), radius * Math.sin((degrees * Math.PI) / 180)];
    const { wall } = await wallOf((file, storey) => {
      const points = [at(outer, 0), at(outer, 45), at(outer, 90), at(inner, 90), at(inner, 45), at(inner, 0)];
      const curve = file.add('IFCINDEXEDPOLYCURVE', file.add('IFCCARTESIANPOINTLIST2D', points), ['IFCARCINDEX((1,2,3))', 'IFCLINEINDEX((3,4))', 'IFCARCINDEX((4,5,6))', 'IFCLINEINDEX((6,1))'], '.F.');
      file.wall({ storey, body: swept(file, file.extruded(file.add('IFCARBITRARYCLOSEDPROFILEDEF', '.AREA.', null, curve), 2600)) });
    });
    expect(wall).toMatchObject({ core: '6', arc: { radius: 5000 * MM } });
    expect(Math.abs(wall.length - (5000 * MM * Math.PI) / 2)).toBeLessThan(1_000);
    // Counter-clockwise about the centre is to the left; its own x points along +x, and so the line runs from (0, 5000) to (5000, 0): to the right.
    expect(wall.arc?.turns).toBe('right');
    expect(Math.hypot(wall.from.x, wall.from.y - 5000 * MM)).toBeLessThan(2_000);
  });
});

describe('a cut wall', () => {
  const body = (file: IfcFile, solid: Ref): Ref => file.shape('Body', 'Clipping', solid);
  /** Slopes of 30° from eaves at 2,600 mm: the peak of a wall of 6 m is 3000·tan 30° higher. */
  const rise = 3000 * Math.tan(Math.PI / 6);
  const [sin, cos] = [Math.sin(Math.PI / 6), Math.cos(Math.PI / 6)];
  const peaked = (file: IfcFile, solid: Ref, bounds: readonly (readonly (readonly number[])[] | null)[] = [null, null]): Ref =>
    file.clipped(file.clipped(solid, [0, 0, 2600], [-sin, 0, cos], bounds[0]), [6000, 0, 2600], [sin, 0, cos], bounds[1]);
  const solid = (file: IfcFile): Ref => file.extruded(file.rectangle(6000, FORM), 5000);

  it.each([
    ['everywhere', [null, null]],
    ['each on its half', [[[-100, -500], [3000, -500], [3000, 500], [-100, 500]], [[3000, -500], [6100, -500], [6100, 500], [3000, 500]]]],
  ] as const)('by two planes, %s, has a gable', async (_, bounds) => {
    const { wall, schedule } = await wallOf((file, storey) => file.wall({ storey, body: body(file, peaked(file, solid(file), bounds)) }));
    expect(wall.height).toBe(2600 * MM);
    expect(schedule.features).toMatchObject([{ kind: 'gable', wall: 'W1', peakAt: 3000 * MM }]);
    const [gable] = schedule.features;
    expect(Math.abs((gable?.kind === 'gable' ? gable.rise : 0) - rise * MM)).toBeLessThan(2_000);
  });

  it('by one plane slopes from end to end', async () => {
    const { wall, schedule } = await wallOf((file, storey) => file.wall({ storey, body: body(file, file.clipped(solid(file), [0, 0, 2600], [-0.1 / Math.hypot(0.1, 1), 0, 1 / Math.hypot(0.1, 1)])) }));
    expect(wall.height).toBe(2600 * MM);
    expect(schedule.features).toMatchObject([{ kind: 'gable', rise: 600 * MM, peakAt: 6000 * MM }]);
  });

  it('by a level plane is as high as that', async () => {
    const { wall, schedule } = await wallOf((file, storey) => file.wall({ storey, body: body(file, file.clipped(solid(file), [0, 0, 2400], [0, 0, 1])) }));
    expect(wall.height).toBe(2400 * MM);
    expect(schedule.features).toEqual([]);
  });

  it.each([
    ['with a flat peak', (file: IfcFile) => peaked(file, file.extruded(file.rectangle(6000, FORM), 3000)), 'neither level nor one slope nor one peak'],
    ['with unequal eaves', (file: IfcFile) => file.clipped(file.clipped(solid(file), [0, 0, 2600], [-sin, 0, cos]), [6000, 0, 3600], [sin, 0, cos]), 'neither level nor one slope nor one peak'],
    ['across its thickness', (file: IfcFile) => file.clipped(solid(file), [0, 0, 2600], [0, sin, cos]), 'slopes across the wall'],
    ['upright at its end', (file: IfcFile) => file.clipped(solid(file), [5000, 0, 0], [1, 0, 0]), 'stands upright'],
    ['from below', (file: IfcFile) => file.clipped(solid(file), [0, 0, 500], [-sin, 0, -cos]), 'from below'],
  ])('%s keeps its height before the cut, and that is told', async (_, clip, words) => {
    const { wall, schedule } = await wallOf((file, storey) => file.wall({ storey, body: body(file, clip(file)) }));
    expect([3000 * MM, 5000 * MM]).toContain(wall.height);
    expect(schedule.features).toEqual([]);
    expect(schedule.noted).toMatchObject([{ globalId: expect.stringMatching(/^W1/), note: expect.stringContaining(words) }]);
  });

  it('drawn by its elevation and extruded through its thickness has the same gable', async () => {
    const { wall, schedule } = await wallOf((file, storey) => {
      const profile = file.outline([[0, 0], [6000, 0], [6000, 2600], [3000, 3600], [0, 2600]]);
      file.wall({ storey, body: swept(file, file.extruded(profile, FORM, { origin: [0, 139.7, 0], axis: [0, -1, 0], ahead: [1, 0, 0] })) });
    });
    expect(wall).toMatchObject({ core: '6', from: { x: 0, y: 0 }, to: { x: 6000 * MM, y: 0 }, height: 2600 * MM });
    expect(schedule.features).toMatchObject([{ kind: 'gable', rise: 1000 * MM, peakAt: 3000 * MM }]);
  });
});
