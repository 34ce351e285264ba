import { describe, expect, it } from '@jest/globals';
import { normaliseLines } from '../../../../src/domain/schedule/line-normalisation.js';
import type { Schedule } from '../../../../src/domain/schedule/schedule.js';
import { IfcFile, type Ref } from '../../../support/ifc-files.js';
import { HERON, scheduleOf } from '../../../support/opened-model.js';

const MM = 1_000_000;
const FORM = 279.4;
const HALF = FORM / 2;

/** A straight wall between two points of its own line. */
function straight(file: IfcFile, storey: Ref, name: string, [x, y]: readonly number[], [u, v]: readonly number[], thickness = FORM): Ref {
  const turn = (Math.atan2(v! - y!, u! - x!) * 180) / Math.PI;
  const solid = file.extruded(file.rectangle(Math.hypot(u! - x!, v! - y!), thickness), 2600);
  return file.wall({ name, storey, at: { origin: [x!, y!, 0], turn }, body: file.shape('Body', 'SweptSolid', solid) });
}
const ends = ({ walls }: Schedule): Record<string, readonly number[]> =>
  Object.fromEntries(walls.map(({ mark, from, to }) => [mark, [from.x / MM, from.y / MM, to.x / MM, to.y / MM]]));
const nodes = ({ walls }: Schedule) => normaliseLines(walls, (core) => HERON.coreWidths?.get(core) ?? 0);

/** The rectangle of 6 m by 4 m on its middle lines, drawn in three ways that models use. */
const drawings: [string, readonly (readonly [string, readonly number[], readonly number[]])[]][] = [
  ['to the middle lines', [['A', [0, 0], [6000, 0]], ['B', [6000, 0], [6000, 4000]], ['C', [6000, 4000], [0, 4000]], ['D', [0, 4000], [0, 0]]]],
  ['two through, two between', [['A', [-HALF, 0], [6000 + HALF, 0]], ['B', [6000, HALF], [6000, 4000 - HALF]], ['C', [6000 + HALF, 4000], [-HALF, 4000]], ['D', [0, 4000 - HALF], [0, HALF]]]],
  ['each to one outer face', [['A', [-HALF, 0], [6000 - HALF, 0]], ['B', [6000, -HALF], [6000, 4000 - HALF]], ['C', [6000 + HALF, 4000], [HALF, 4000]], ['D', [0, 4000 + HALF], [0, HALF]]]],
  ['all to the outer faces', [['A', [-HALF, 0], [6000 + HALF, 0]], ['B', [6000, -HALF], [6000, 4000 + HALF]], ['C', [6000 + HALF, 4000], [-HALF, 4000]], ['D', [0, 4000 + HALF], [0, -HALF]]]],
];

describe('corners', () => {
  it.each(drawings)('of a rectangle drawn %s meet on the middle lines', async (_, walls) => {
    const file = new IfcFile('mm', { turn: 37 });
    const storey = file.storey('S1', 0);
    for (const [name, from, to] of walls) straight(file, storey, name, from, to);
    const schedule = await scheduleOf(file);
    expect(ends(schedule)).toEqual({ A: [0, 0, 6000, 0], B: [6000, 0, 6000, 4000], C: [6000, 4000, 0, 4000], D: [0, 4000, 0, 0] });
    expect(schedule.walls.map(({ length }) => length / MM)).toEqual([6000, 4000, 6000, 4000]);
    expect(nodes(schedule)).toMatchObject({ loops: 1, chains: [{ closed: true }] });
    const moved = walls.flatMap(([name, from, to]) => {
      const drawn = ends(schedule)[name]!;
      return [from, to].flatMap(([x, y], end) => (Math.hypot(x! - drawn[2 * end]!, y! - drawn[2 * end + 1]!) > 0.001 ? [name] : []));
    });
    expect(schedule.noted?.map(({ name }) => name).sort()).toEqual(moved.sort());
    for (const { note } of schedule.noted ?? []) expect(note).toMatch(/its (start|end) was brought to the line of \w+: 139\.7 mm (longer|shorter)/);
  });

  it('that turn by 45° are found within the faces of a square cut', async () => {
    const file = new IfcFile('mm');
    const storey = file.storey('S1', 0);
    straight(file, storey, 'A', [0, 0], [4000, 0]);
    const back = HALF * Math.tan(Math.PI / 8) * Math.SQRT1_2;
    straight(file, storey, 'B', [4000 + back, back], [6000, 2000]);
    const { A, B } = ends(await scheduleOf(file));
    expect([A?.[2], A?.[3]]).toEqual([4000, 0]);
    expect(Math.hypot(B![0]! - 4000, B![1]!)).toBeLessThan(0.002);
  });

  it('are not made where an end lies farther than a face and 1 mm', async () => {
    const file = new IfcFile('mm');
    const storey = file.storey('S1', 0);
    straight(file, storey, 'A', [0, 0], [4000, 0]);
    straight(file, storey, 'B', [4000, HALF + 2], [4000, 3000]);
    const schedule = await scheduleOf(file);
    expect(ends(schedule).B?.[1]).toBe(HALF + 2);
    expect(schedule.noted).toEqual([]);
  });

  it('are made farther off where the model declares them', async () => {
    const file = new IfcFile('mm');
    const storey = file.storey('S1', 0);
    const a = straight(file, storey, 'A', [0, 0], [4000, 0]);
    const b = straight(file, storey, 'B', [4000, HALF + 20], [4000, 3000]);
    file.connect(a, '.ATEND.', b, '.ATSTART.');
    expect(ends(await scheduleOf(file))).toMatchObject({ A: [0, 0, 4000, 0], B: [4000, 0, 4000, 3000] });
  });

  it('of walls in two storeys stay apart', async () => {
    const file = new IfcFile('mm');
    straight(file, file.storey('S1', 0), 'A', [0, 0], [4000, 0]);
    straight(file, file.storey('S2', 2600), 'B', [4000, HALF], [4000, 3000]);
    expect((await scheduleOf(file)).noted).toEqual([]);
  });
});

describe('tees', () => {
  const tee = async (y: number, thickness = FORM, declared = false): Promise<Schedule> => {
    const file = new IfcFile('mm');
    const storey = file.storey('S1', 0);
    const layers = file.layers([['brick', (thickness - FORM) / 2], ['foam', 63.5], ['concrete', 152.4], ['foam', 63.5], ['brick', (thickness - FORM) / 2]]);
    const solid = file.extruded(file.rectangle(8000, thickness), 2600);
    const a = file.wall({ name: 'A', storey, body: file.shape('Body', 'SweptSolid', solid), material: layers });
    const b = straight(file, storey, 'B', [3000, y], [3000, 4000]);
    if (declared) file.connect(b, '.ATSTART.', a, '.ATPATH.');
    return scheduleOf(file);
  };

  it.each([['at the face', HALF], ['in the middle', 0], ['at the far face', -HALF]])('%s stay as they are drawn', async (_, y) => {
    const schedule = await tee(y);
    expect(ends(schedule).B).toEqual([3000, y, 3000, 4000]);
    expect(schedule.noted).toEqual([]);
  });

  it('at cladding outside the forms go on to the line', async () => {
    const schedule = await tee(HALF + 90, FORM + 180);
    expect(ends(schedule).B).toEqual([3000, 0, 3000, 4000]);
    expect(schedule.noted).toMatchObject([{ name: 'B', note: expect.stringContaining('its start was brought to the line of') }]);
  });
});

it('holes and gables keep their places when an end is moved', async () => {
  const file = new IfcFile('mm');
  const storey = file.storey('S1', 0);
  const slope = 0.5;
  const normal = [slope / Math.hypot(slope, 1), 0, 1 / Math.hypot(slope, 1)];
  const [x = 0, , z = 0] = normal;
  const solid = file.extruded(file.rectangle(6000 + FORM, FORM, [3000, 0]), 6000);
  const peaked = file.clipped(file.clipped(solid, [0, 0, 2600], [-x, 0, z]), [6000, 0, 2600], [x, 0, z]);
  const a = file.wall({ name: 'A', storey, body: file.shape('Body', 'Clipping', peaked) });
  file.opening(a, file.extruded(file.rectangle(900, 500, [1450, 0]), 2100));
  file.opening(a, file.extruded(file.rectangle(600, 500, [3000, 0]), 600, { origin: [0, 0, 2900] }), 'Under the slope');
  file.opening(a, file.extruded(file.rectangle(600, 500, [900, 0]), 600, { origin: [0, 0, 2900] }), 'Through it');
  straight(file, storey, 'B', [6000, HALF], [6000, 4000]);
  straight(file, storey, 'D', [0, 4000], [0, HALF]);
  const schedule = await scheduleOf(file);
  expect(ends(schedule).A).toEqual([0, 0, 6000, 0]);
  expect(schedule.openings).toMatchObject([
    { wall: 'A', at: 1000 * MM, sill: 0, width: 900 * MM, height: 2100 * MM },
    { mark: 'Under the slope', at: 2700 * MM, sill: 2900 * MM, width: 600 * MM, height: 600 * MM },
  ]);
  // Over the near jamb at 0.6 m the slope of 0.5 is 0.3 m above 2.6 m, as low as its sill.
  expect(schedule.skipped).toMatchObject([{ name: 'Through it', kind: 'IfcOpeningElement' }]);
  expect(schedule.walls[0]?.height).toBe(2600 * MM);
  expect(schedule.features).toMatchObject([{ kind: 'gable', rise: 1500 * MM, peakAt: 3000 * MM }]);
});
