import { BUILDING_CODES } from '../schedule.js';
import { JOB_KEYS, type RowKind } from '../tabular/columns.js';

/** What a column or a setting takes, said once: in the notes of the template, its drop-downs and its page of explanations. */
export interface ColumnNote {
  readonly note: string;
  /** Words to choose from; `cores` and `ranges` are those of the supplier, the others the names written on another sheet. */
  readonly choices?: readonly string[] | 'cores' | 'ranges' | 'storeys' | 'walls';
}

const note = (text: string, choices?: ColumnNote['choices']): ColumnNote => (choices === undefined ? { note: text } : { note: text, choices });
const YES_NO = ['yes', 'no'];
const LENGTH = `A length, such as 12'-6 1/2" or 3.81 m`;

const joint = (end: 'start' | 'end'): Readonly<Record<string, ColumnNote>> => ({
  [`${end}/joint`]: note(`What the ${end} of a wall without coordinates meets: a corner, a tee on another wall, or nothing (free).`, ['corner', 'tee', 'free']),
  [`${end}/turn`]: note('Corner: degrees by which the line turns, plus to the left, minus to the right, walking the wall from its start to its end.'),
  [`${end}/with/wall`]: note('Corner: the other wall.', 'walls'),
  [`${end}/with/end`]: note('Corner: which end of the other wall.', ['start', 'end']),
  [`${end}/on`]: note('Tee: the wall that goes through.', 'walls'),
  [`${end}/at`]: note(`Tee: the station on the wall that goes through, from its start. ${LENGTH}.`),
  [`${end}/side`]: note('Tee: the side of the wall that goes through, walking from its start.', ['left', 'right']),
});

export const COLUMN_NOTES: Readonly<Record<RowKind, Readonly<Record<string, ColumnNote>>>> = {
  walls: {
    mark: note('The name of the wall, once in the job. Needed.'),
    storey: note('The storey it stands in. May be left out where the job has one storey.', 'storeys'),
    core: note('Thickness of the concrete: a core of the form range. Needed.', 'cores'),
    'from/0': note(`Start of the wall on the plan, to the right. Walk walls with the building on the left. ${LENGTH}.`),
    'from/1': note(`Start of the wall on the plan, up. ${LENGTH}.`),
    'to/0': note(`End of the wall on the plan, to the right. ${LENGTH}.`),
    'to/1': note(`End of the wall on the plan, up. ${LENGTH}.`),
    length: note(`Needed where there are no coordinates, with the joints at both ends; beside coordinates it must agree with them. ${LENGTH}.`),
    height: note(`Left out: up to the top of its storey. ${LENGTH}.`),
    base: note(`Bottom of the wall above the bottom of its storey; left out: 0. ${LENGTH}.`),
    dimensionsTo: note('The line that is dimensioned, where it is another than that of the job.', ['foam-face', 'concrete-face', 'axis']),
    ...joint('start'),
    ...joint('end'),
    'arc/radius': note(`Curved walls: the radius to the dimension line. ${LENGTH}.`),
    'arc/turns': note('Curved walls: the way the wall bends, walking from its start.', ['left', 'right']),
  },
  openings: {
    mark: note('The name of the opening, once in the job; left out: O and the number of its row.'),
    wall: note('The wall it is in. Needed.', 'walls'),
    at: note(`From the start of the wall along the dimension line to the nearer jamb. Needed. ${LENGTH}.`),
    sill: note(`Bottom of the opening above the bottom of the wall; 0 for a door. Needed. ${LENGTH}.`),
    width: note(`Needed. ${LENGTH}.`),
    height: note(`Needed. ${LENGTH}.`),
    lining: note('buck (left out: this) or end-closure.', ['buck', 'end-closure']),
    measured: note('What width and height are: the hole in the concrete, or rough, to which the buck is added. Needed, here or once on the job sheet.', ['concrete', 'rough']),
  },
  features: {
    kind: note('What it is; each kind reads its own columns. Needed.', ['ledge', 'taper-top', 'gable', 'core-change']),
    wall: note('The wall it belongs to. Needed.', 'walls'),
    at: note(`Ledge: height of the bearing surface above the bottom of the wall. Core change: height at which the core changes. ${LENGTH}.`),
    from: note(`Ledge: where it starts along the wall; left out: at the start of the wall. ${LENGTH}.`),
    to: note(`Ledge: where it ends along the wall; left out: at the end of the wall. ${LENGTH}.`),
    face: note('Ledge: the face it stands out from.', ['outside', 'inside']),
    faces: note('Taper top: one face or both.', ['one', 'both']),
    rise: note(`Gable: height of the peak above the wall. ${LENGTH}.`),
    peakAt: note(`Gable: station of the peak from the start of the wall. ${LENGTH}.`),
    core: note('Core change: the core above the change.', 'cores'),
    flush: note('Core change: the face that stays in line.', ['outside', 'inside', 'centre']),
  },
  storeys: {
    id: note('The name of the storey. Needed.'),
    height: note(`Height of its walls, unless a wall says otherwise. Needed. ${LENGTH}.`),
    grade: note('above (left out: this) or below ground.', ['above', 'below']),
    storeyAbove: note('yes where forms of another storey will stand on this one; left out: no.', YES_NO),
    closed: note('yes where the outer walls are drawn as a closed ring, so that a gap is found; left out: no.', YES_NO),
    on: note('The storey it stands on.', 'storeys'),
    dead: note('Dead load of floors and roof on the top of each wall, with its unit, such as 400 lb/ft. For lintels.'),
    live: note('Live load of floors likewise.'),
    snow: note('Snow load of the roof likewise.'),
  },
};

const UNIT = 'with its unit';
const QUANTITIES: Readonly<Record<string, string>> = {
  'site/wind': 'Design wind speed', 'site/soil': 'Weight of the soil as a fluid', 'site/snow': 'Ground snow load', 'pour/rise': 'Rate at which the concrete rises',
  'pour/concrete': 'Temperature of the concrete in the forms', 'pour/unitWeight': 'Weight of the concrete', 'pour/air': 'Air temperature at the pour',
  'pour/wind': 'Wind speed at the pour', 'pour/pump': 'Volume the pump places', 'pour/truck': 'Volume of a truck',
  'site/duration': 'How long the forms stand before the concrete holds them', 'pour/discharge': 'Time from batching to the end of discharge',
};

/** What each setting of the job takes, by its path in the document. */
export const JOB_NOTES: Readonly<Record<string, ColumnNote>> = {
  format: note('The version of this format; it may be left out.'),
  name: note('The name of the job, at most 200 characters. Needed.'),
  units: note('The unit of bare numbers in all sheets. Needed.', ['in', 'ft', 'mm', 'm']),
  dimensionsTo: note('The line that is dimensioned: the outer foam face, the outer face of the concrete, or the middle of the wall. Needed.', ['foam-face', 'concrete-face', 'axis']),
  range: note('The form range.', 'ranges'),
  offcuts: note('What an offcut may be used for: its own storey, or any storey of the job. Storey where it is left out.', ['storey', 'job']),
  measured: note('What the sizes of openings are where their own column does not say.', ['concrete', 'rough']),
  'site/exposure': note('Exposure to wind.', ['B', 'C', 'D']),
  'site/backfill': note(`Height of soil against the wall. ${LENGTH}.`),
  'site/seismic': note('Seismic design category.'),
  'site/code': note('The code whose tables bars and lintels are read from; left out: irc-2018.', BUILDING_CODES),
  'pour/cement': note('Type of cement, such as I.'),
  'pour/retarder': note('Whether the concrete is retarded.', YES_NO),
  'pour/slump': note('Slump of the concrete with its unit, such as 6.5 in.'),
  'pour/stone': note('Largest stone of the mix with its unit, such as 0.375 in.'),
  'pour/humidity': note('Relative humidity of the air at the pour, from 0 to 1.'),
  ...Object.fromEntries(Object.entries(QUANTITIES).map(([field, says]) => [field, note(`${says}, ${UNIT}.`)])),
};

/** `site/wind` is written `site.wind`. */
export const jobKeyName = (field: string): string => field.replace('/', '.');
export const JOB_FIELDS: readonly string[] = JOB_KEYS.map(({ field }) => field);
