import { describe, expect, it } from '@jest/globals';
import { FEATURE_KEYS } from '../../../src/domain/schedule/read-features.js';
import { JOINT_KEYS, WITH_KEYS } from '../../../src/domain/schedule/read-joint.js';
import { OPENING_KEYS } from '../../../src/domain/schedule/read-openings.js';
import { DOCUMENT_KEYS } from '../../../src/domain/schedule/read-schedule-document.js';
import { POUR_KEYS, SITE_KEYS } from '../../../src/domain/schedule/read-site-and-pour.js';
import { STOREY_KEYS } from '../../../src/domain/schedule/read-storeys.js';
import { ARC_KEYS, WALL_KEYS } from '../../../src/domain/schedule/read-walls.js';
import { COLUMNS, JOB_KEYS, NEEDED, type RowKind } from '../../../src/domain/schedule/tabular/columns.js';
import { kindOfHeader, plainHeader, readHeader } from '../../../src/domain/schedule/tabular/header.js';

const fieldsOf = (kind: RowKind): string[] => COLUMNS[kind].map(({ field }) => field);
const heads = (fields: readonly string[]): string[] => [...new Set(fields.map((field) => field.split('/')[0] ?? ''))].sort();

describe('columns', () => {
  it('stand for every field of the document, and for no other', () => {
    expect(heads(fieldsOf('walls'))).toEqual([...WALL_KEYS].sort());
    expect(heads(fieldsOf('openings'))).toEqual([...OPENING_KEYS].sort());
    expect(heads(fieldsOf('features'))).toEqual([...FEATURE_KEYS].sort());
    expect(heads(fieldsOf('storeys'))).toEqual([...STOREY_KEYS].sort());
    for (const end of ['start', 'end']) {
      const joint = JOINT_KEYS.flatMap((key) => (key === 'with' ? WITH_KEYS.map((part) => `${end}/with/${part}`) : [`${end}/${key}`]));
      expect(fieldsOf('walls').filter((field) => field.startsWith(`${end}/`)).sort()).toEqual(joint.sort());
    }
    expect(fieldsOf('walls').filter((field) => field.startsWith('arc/')).sort()).toEqual(ARC_KEYS.map((key) => `arc/${key}`).sort());
  });

  it('job keys stand for everything that is no list, and for how openings are measured', () => {
    const single = DOCUMENT_KEYS.filter((key) => !['storeys', 'walls', 'openings', 'features', 'site', 'pour'].includes(key));
    const expected = [...single, 'measured', ...SITE_KEYS.map((key) => `site/${key}`), ...POUR_KEYS.map((key) => `pour/${key}`)];
    expect(JOB_KEYS.map(({ field }) => field).sort()).toEqual(expected.sort());
  });

  it('no header means two columns of one table', () => {
    for (const rules of Object.values(COLUMNS)) {
      const names = rules.flatMap(({ name, also }) => [...new Set([plainHeader(name), ...also])]);
      expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
    }
  });

  it('the columns of the design, and those a table cannot do without, tell the kind of the table', () => {
    for (const kind of Object.keys(COLUMNS) as RowKind[]) {
      expect(kindOfHeader(COLUMNS[kind].map(({ name }) => name))).toBe(kind);
      const needed = COLUMNS[kind].filter(({ field }) => NEEDED[kind].includes(field)).map(({ name }) => name);
      expect(kindOfHeader(kind === 'walls' ? [...needed, 'length'] : needed)).toBe(kind);
    }
    expect(kindOfHeader(['Key', 'Value'])).toBe('job');
  });

  it.each<[string, string[], string | undefined]>([
    ['walls by length', ['Wall', 'L', 'Ht', 'Thk'], 'walls'],
    ['walls without a core', ['Mark', 'X1', 'Y1', 'X2', 'Y2'], 'walls'],
    ['openings with a type', ['Type', 'Mark', 'Wall', 'At', 'W', 'H', 'Sill'], 'openings'],
    ['openings without a wall', ['Mark', 'At', 'Width', 'Height', 'Sill'], 'openings'],
    ['ledges', ['Kind', 'Wall', 'At', 'From', 'To', 'Face'], 'features'],
    ['core changes', ['Kind', 'Wall', 'At', 'Core', 'Flush'], 'features'],
    ['levels', ['Level', 'Ht'], 'storeys'],
    ['contacts', ['Name', 'Phone'], undefined],
    ['prose', ['Dear supplier'], undefined],
  ])('%s', (_name, headers, kind) => expect(kindOfHeader(headers)).toBe(kind));

  it.each<[string, string | undefined, string | null]>([
    ['height (ft)', 'height', 'ft'],
    ['Height [mm]', 'height', 'mm'],
    ['height_m', 'height', 'm'],
    ['Ht"', 'height', 'in'],
    ["L'", 'length', 'ft'],
    ['"Height"', 'height', null],
    ['Mark"', undefined, null],
    ['HEIGHT, inches', 'height', 'in'],
    ['wall height', 'height', null],
    ['From X (mm)', 'from/0', 'mm'],
    ['mark (as drawn)', 'mark', null],
    ['height above sea', undefined, null],
  ])('%s', (text, field, unit) => {
    const header = readHeader('walls', text);
    expect(header?.rule.field).toBe(field);
    expect(header?.unit ?? null).toBe(unit);
    expect(header?.fault ?? null).toBeNull();
  });
});
