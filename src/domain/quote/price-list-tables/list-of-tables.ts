import { InputErrorList, type InputError } from '../../evidence/input-error.js';
import { ItemRows } from './item-rows.js';
import { cellError, columnName, fieldValue, flagValue, type PriceRow, type PriceTable, type TablePlace } from './read-cells.js';
import { LIST_SETTINGS, type PriceSheet } from './sheet-columns.js';

type Writable = Record<string, unknown>;

/** The document that tables make together, what was wrong before it became one, and where each of its values stood. */
export interface ListOfTables {
  readonly document: Readonly<Record<string, unknown>>;
  readonly errors: readonly InputError[];
  /** An error of the document at its row and column. */
  readonly placed: (error: InputError) => InputError;
}

/** Puts tables together as a document `wallcourse/prices@1`; several tables of one kind follow one another. Whether its values hold is for `readPriceList`. */
export function listOfTables(tables: readonly PriceTable[]): ListOfTables {
  const errors = new InputErrorList();
  const places = new Map<string, TablePlace>();
  const of = (sheet: PriceSheet): readonly PriceTable[] => tables.filter((table) => table.sheet === sheet);
  const document: Writable = settings(of('list'), places, errors);
  const items = new ItemRows(places, errors);
  for (const table of of('items')) for (const row of table.rows) items.add(table, row);
  document['items'] = items.items;
  document['taxes'] = plainRows(of('taxes'), '/taxes', places);
  for (const sheet of ['customers', 'discounts'] as const) {
    const rows = plainRows(of(sheet), `/${sheet}`, places);
    if (rows.length > 0) document[sheet] = rows;
  }
  const zones = zonesOf(of('zones'), places, errors);
  if (zones.length > 0 || document['freight'] !== undefined) document['freight'] = { ...(document['freight'] as Writable | undefined), zones };
  return { document, errors: errors.list(), placed: (error) => placedAt(error, places) };
}

function settings(tables: readonly PriceTable[], places: Map<string, TablePlace>, errors: InputErrorList): Writable {
  const document: Writable = {};
  for (const { table, row, cells } of rowsOf(tables)) {
    const key = cells.get('key') ?? '';
    const pointer = `/${key.replaceAll('.', '/')}`;
    if (!(LIST_SETTINGS as readonly string[]).includes(key)) cellError(errors, { table, row }, 'key', key, `one of ${LIST_SETTINGS.join(', ')}`);
    else if (places.has(pointer)) cellError(errors, { table, row }, 'key', key, 'each key once');
    else {
      places.set(pointer, { table, row });
      const value = cells.get('value');
      if (value !== undefined) put(document, key.split('.'), fieldValue(key, value));
    }
  }
  return document;
}

function put(document: Writable, path: readonly string[], value: unknown): void {
  const [key = '', ...rest] = path;
  if (rest.length === 0) document[key] = value;
  else put((document[key] ??= {}) as Writable, rest, value);
}

/** Rows whose columns are the fields of the document. */
const plainRows = (tables: readonly PriceTable[], pointer: string, places: Map<string, TablePlace>): readonly Writable[] =>
  rowsOf(tables).map(({ table, row, cells }, index) => {
    places.set(`${pointer}/${index}`, { table, row });
    return Object.fromEntries([...cells].map(([field, text]) => [field, field === 'freight' ? flagValue(text) : text]));
  });

function zonesOf(tables: readonly PriceTable[], places: Map<string, TablePlace>, errors: InputErrorList): readonly Writable[] {
  const zones: (Writable & { readonly places: string[] })[] = [];
  for (const { table, row, cells } of rowsOf(tables)) {
    const { zone = '', place, ...prices } = Object.fromEntries(cells);
    let known = zones.findIndex((each) => each['zone'] === zone);
    if (known < 0) {
      known = zones.push({ zone, places: [], ...prices }) - 1;
      places.set(`/freight/zones/${known}`, { table, row });
    } else {
      for (const [column, text] of Object.entries(prices)) {
        if (zones[known]?.[column] !== text) cellError(errors, { table, row }, column, text, `an empty cell, or what stands on the first row of zone ${zone}`);
      }
      if (place === undefined) cellError(errors, { table, row }, 'place', '', `a place: zone ${zone} has a row above`);
    }
    const zonePlaces = zones[known]?.places;
    if (place !== undefined && zonePlaces) places.set(`/freight/zones/${known}/places/${zonePlaces.push(place) - 1}`, { table, row });
  }
  return zones;
}

const rowsOf = (tables: readonly PriceTable[]): readonly (PriceRow & { readonly table: PriceTable })[] =>
  tables.flatMap((table) => table.rows.map((row) => ({ table, ...row })));

/** The place of the value itself, or of the row it belongs to. */
function placedAt(error: InputError, places: ReadonlyMap<string, TablePlace>): InputError {
  const steps = (error.pointer ?? '').split('/');
  for (let length = steps.length; length > 1; length -= 1) {
    const place = places.get(steps.slice(0, length).join('/'));
    if (place) return { ...error, sheet: place.table.name, row: place.row, column: columnOf(steps, place.table) };
  }
  return error;
}

function columnOf(steps: readonly string[], table: PriceTable): string | null {
  if (table.sheet === 'list') return columnName(table, 'value');
  const field = steps.at(-1) ?? '';
  if (steps.at(-2) === 'places') return columnName(table, 'place');
  const audience = { tiers: 'tier', customers: 'customer' }[steps.at(-2) ?? ''];
  return columnName(table, table.sheet === 'items' && audience ? audience : field);
}
