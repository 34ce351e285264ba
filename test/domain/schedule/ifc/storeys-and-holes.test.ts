import { describe, expect, it } from '@jest/globals';
import { IfcFile, type Ref } from '../../../support/ifc-files.js';
import { readIfc, scheduleOf } from '../../../support/opened-model.js';

const MM = 1_000_000;
const FORM = 279.4;

function wall(file: IfcFile, storey: Ref, name: string, height = 2600, z = 0): Ref {
  return file.wall({ name, storey, at: { origin: [0, 0, z] }, body: file.shape('Body', 'SweptSolid', file.extruded(file.rectangle(6000, FORM), height)) });
}

describe('storeys', () => {
  it('are as high as the next level is above them, the last as its tallest wall, and stand on each other', async () => {
    const file = new IfcFile('ft');
    const basement = file.storey('Basement', -9);
    const ground = file.storey('Ground', 0);
    const above = file.storey('Above', 10);
    const above_ground = file.add('IFCPROPERTYSINGLEVALUE', "'AboveGround'", null, 'IFCLOGICAL(.F.)', null);
    const set = file.add('IFCPROPERTYSET', "'storey0000000000000001'", null, "'Pset_BuildingStoreyCommon'", null, [above_ground]);
    file.add('IFCRELDEFINESBYPROPERTIES', "'storey0000000000000002'", null, null, null, [basement], set);
    for (const [index, [storey, height]] of ([[above, 8.5], [ground, 9], [basement, 8]] as const).entries())
      file.wall({ name: `W${index}`, storey, body: file.shape('Body', 'SweptSolid', file.extruded(file.rectangle(20, 11 / 12), height)) });
    const { storeys, walls, units } = await scheduleOf(file);
    expect(units).toBe('ft');
    expect(storeys).toMatchObject([
      { id: 'Basement', height: Math.round(9 * 304.8 * MM), grade: 'below', on: null, storeyAbove: true },
      { id: 'Ground', height: Math.round(10 * 304.8 * MM), grade: 'above', on: 'Basement', storeyAbove: true },
      { id: 'Above', height: Math.round(8.5 * 304.8 * MM), on: 'Ground', storeyAbove: false },
    ]);
    expect(walls.map(({ storey, height, base }) => [storey, height / MM, base])).toEqual([['Basement', 8 * 304.8, 0], ['Ground', 2743.2, 0], ['Above', 8.5 * 304.8, 0]]);
  });

  it('without walls give heights and are not told', async () => {
    const file = new IfcFile('mm');
    wall(file, file.storey('Ground', 0), 'A');
    file.storey('Roof', 2800);
    expect((await scheduleOf(file)).storeys).toMatchObject([{ id: 'Ground', height: 2800 * MM }]);
  });

  it('keep a wall that begins above or below the level where it stands', async () => {
    const file = new IfcFile('mm');
    const ground = file.storey('Ground', 0);
    wall(file, ground, 'A', 2600, 0);
    wall(file, ground, 'B', 2000, 600);
    wall(file, ground, 'C', 3000, -400);
    file.storey('Roof', 2800);
    const { walls, storeys, noted } = await scheduleOf(file);
    expect(walls.map(({ mark, base, height }) => [mark, base / MM, height / MM])).toEqual([['A', 400, 2600], ['B', 1000, 2000], ['C', 0, 3000]]);
    expect(storeys).toMatchObject([{ height: 3200 * MM }]);
    expect(noted).toMatchObject([{ kind: 'IfcBuildingStorey', name: 'Ground', note: 'it begins below its level, at the foot of its lowest wall' }]);
  });

  it('hold walls through assemblies; a wall in none is left out', async () => {
    const file = new IfcFile('mm');
    const ground = file.storey('Ground', 0);
    const assembly = file.other('IFCELEMENTASSEMBLY', 'Panel', ground, [null, null]);
    const body = (): Ref => file.shape('Body', 'SweptSolid', file.extruded(file.rectangle(6000, FORM), 2600));
    const inside = file.wall({ name: 'A', body: body() });
    file.wall({ name: 'B', body: body(), at: { origin: [0, 5000, 0] } });
    file.relate('IFCRELAGGREGATES', assembly, [inside]);
    const { walls, skipped } = await scheduleOf(file);
    expect(walls.map(({ mark }) => mark)).toEqual(['A']);
    expect(skipped).toMatchObject([{ name: 'B', reason: 'it stands in no storey' }, { kind: 'IfcElementAssembly' }]);
  });
});

describe('openings', () => {
  const holes = async (build: (file: IfcFile, wall: Ref) => unknown) => {
    const file = new IfcFile('mm', { turn: 37 });
    build(file, wall(file, file.storey('Ground', 0), 'A'));
    const { openings, skipped, noted } = await scheduleOf(file);
    return { holes: openings.map(({ mark, at, sill, width, height, measured }) => [mark, at / MM, sill / MM, width / MM, height / MM, measured]), skipped, noted };
  };
  const window: readonly unknown[] = ['O1', 1000, 900, 1200, 1300, 'concrete'];

  it('extruded up, along the thickness and back from the far face are the same hole', async () => {
    const up = await holes((file, host) => file.opening(host, file.extruded(file.rectangle(1200, 400, [1600, 0]), 1300, { origin: [0, 0, 900] })));
    const across = await holes((file, host) => file.opening(host, file.extruded(file.rectangle(1200, 1300, [0, 0]), 400, { origin: [1600, -200, 1550], axis: [0, 1, 0], ahead: [1, 0, 0] })));
    const back = await holes((file, host) => file.opening(host, file.extruded(file.outline([[-600, -650], [600, -650], [600, 650], [-600, 650]]), 400, { origin: [1600, 200, 1550], axis: [0, 1, 0], ahead: [1, 0, 0] }, [0, 0, -1])));
    for (const each of [up, across, back]) expect(each).toEqual({ holes: [window], skipped: [], noted: [] });
  });

  it('filled by a door or not are holes; the door is not listed, one that fills nothing is', async () => {
    const { holes: found, skipped } = await holes((file, host) => {
      const storey = file.storey('Loft', 3000);
      const opening = file.opening(host, file.extruded(file.rectangle(900, 400, [1450, 0]), 2100), 'Door 1');
      file.fill(opening, file.other('IFCDOOR', 'Leaf', storey, [null, null, null, null, null]));
      file.other('IFCWINDOW', 'Stray', storey, [null, null, null, null, null]);
    });
    expect(found).toEqual([['Door 1', 1000, 0, 900, 2100, 'concrete']]);
    expect(skipped).toMatchObject([{ kind: 'IfcWindow', name: 'Stray' }]);
  });

  it('that reach out of the wall are cut at its edges, and that is told', async () => {
    const { holes: found, noted } = await holes((file, host) => file.opening(host, file.extruded(file.rectangle(900, 400, [1450, 0]), 2150, { origin: [0, 0, -50] })));
    expect(found).toEqual([['O1', 1000, 0, 900, 2100, 'concrete']]);
    expect(noted).toMatchObject([{ kind: 'IfcOpeningElement', note: expect.stringContaining('reaches out of its wall') }]);
  });

  it.each([
    ['a niche', (file: IfcFile) => file.extruded(file.rectangle(900, 100, [1450, 140]), 900, { origin: [0, 0, 500] }), 'does not go through the core'],
    ['a triangle', (file: IfcFile) => file.extruded(file.outline([[0, 0], [900, 0], [450, 800]]), 400, { origin: [1000, 200, 500], axis: [0, -1, 0], ahead: [1, 0, 0] }), 'no upright rectangle'],
    ['a skewed box', (file: IfcFile) => file.extruded(file.rectangle(900, 600, [0, 0]), 900, { origin: [2000, 0, 500], turn: 20 }), 'no upright rectangle'],
    ['one beside the wall', (file: IfcFile) => file.extruded(file.rectangle(900, 400, [9000, 0]), 900), 'does not meet its wall'],
  ])('%s is left out with its GlobalId', async (_, solid, reason) => {
    const { holes: found, skipped } = await holes((file, host) => file.opening(host, solid(file)));
    expect(found).toEqual([]);
    expect(skipped).toMatchObject([{ globalId: expect.stringMatching(/^O1/), kind: 'IfcOpeningElement', reason: expect.stringContaining(reason) }]);
  });

  it('that overlap are refused like those of any schedule, by their GlobalIds', async () => {
    const file = new IfcFile('mm');
    const host = wall(file, file.storey('Ground', 0), 'A');
    for (const name of ['O1', 'O2']) file.opening(host, file.extruded(file.rectangle(900, 400, [1450, 0]), 2100), name);
    expect(await readIfc(file)).toMatchObject({ ok: false, error: { code: 'invalid', errors: [{ sheet: 'house.ifc', column: expect.stringMatching(/^IfcOpeningElement O/) }] } });
  });
});

describe('what is no wall, and walls that are not read', () => {
  it('are listed with GlobalId, kind, name and reason, and the rest is read', async () => {
    const file = new IfcFile('mm');
    const ground = file.storey('Ground', 0);
    wall(file, ground, 'A');
    file.other('IFCSLAB', 'Floor', ground);
    file.other('IFCCURTAINWALL', 'Glass', ground);
    const point = (x: number, y: number, z: number): Ref => file.point(x, y, z);
    const face = file.add('IFCFACE', [file.add('IFCFACEOUTERBOUND', file.add('IFCPOLYLOOP', [point(0, 0, 0), point(1, 0, 0), point(0, 1, 0)]), '.T.')]);
    file.wall({ name: 'Brep', storey: ground, body: file.shape('Body', 'Brep', file.add('IFCFACETEDBREP', file.add('IFCCLOSEDSHELL', [face]))) });
    const map = file.add('IFCREPRESENTATIONMAP', file.axes({}), file.shape('Body', 'SweptSolid', file.extruded(file.rectangle(6000, FORM), 2600)));
    const target = file.add('IFCCARTESIANTRANSFORMATIONOPERATOR3D', null, null, file.point(0, 0, 0), null, null);
    file.wall({ name: 'Mapped', storey: ground, body: file.shape('Body', 'MappedRepresentation', file.add('IFCMAPPEDITEM', map, target)) });
    file.wall({ name: 'Curb', storey: ground, body: file.shape('Body', 'SweptSolid', file.extruded(file.rectangle(6000, FORM), 300)) });
    file.wall({ name: 'Nothing', storey: ground });
    const { walls, skipped } = await scheduleOf(file);
    expect(walls.map(({ mark }) => mark)).toEqual(['A']);
    const reasons = Object.fromEntries((skipped ?? []).map(({ name, kind, globalId, reason }) => [name, [kind, globalId.length, reason]]));
    expect(reasons).toEqual({
      Floor: ['IfcSlab', 22, 'it is no wall: walls and the openings in them are read'],
      Glass: ['IfcCurtainWall', 22, 'it is no wall: walls and the openings in them are read'],
      Brep: ['IfcWall', 22, expect.stringContaining('IfcFacetedBrep')],
      Mapped: ['IfcWall', 22, expect.stringContaining('mapped item')],
      Curb: ['IfcWall', 22, 'it is 300 mm high, less than one course of 406.4 mm'],
      Nothing: ['IfcWall', 22, 'it has neither a body nor an axis that is read'],
    });
  });

  it.each(['IFC2X3', 'IFC4X3_ADD2'])('in a file of %s are read alike', async (schema) => {
    const file = new IfcFile('mm', {}, {}, schema);
    wall(file, file.storey('Ground', 0), 'A');
    expect((await scheduleOf(file)).walls).toMatchObject([{ core: '6', length: 6000 * MM }]);
  });

  it('are by themselves: a model beside another file is refused', async () => {
    const file = new IfcFile('mm');
    wall(file, file.storey('Ground', 0), 'A');
    const { readSchedule } = await import('../../../../src/domain/schedule/index.js');
    const { opened, HERON } = await import('../../../support/opened-model.js');
    const bytes = Buffer.from(file.toString());
    const parts = [{ name: 'a.ifc', bytes, model: await opened(file.toString()) }, { name: 'b.csv', bytes: Buffer.from('mark,core\nA,6\n') }];
    expect(await readSchedule(parts, HERON)).toMatchObject({ ok: false, error: { code: 'invalid', errors: [{ sheet: 'a.ifc', read: '2 files', fix: 'one building model by itself' }] } });
  });

  it('in a project without a unit of length are refused', async () => {
    const file = new IfcFile('mm');
    wall(file, file.storey('Ground', 0), 'A');
    const step = file.toString().replaceAll('.LENGTHUNIT.', '.AREAUNIT.');
    expect(await readIfc({ toString: () => step })).toMatchObject({ ok: false, error: { code: 'invalid', errors: [{ fix: expect.stringContaining('states no unit of length') }] } });
  });
});
