import type { InputErrorList } from '../../evidence/input-error.js';
import { cellError, fieldValue, type PriceRow, type PriceTable, type TablePlace } from './read-cells.js';

type Writable = Record<string, unknown>;

interface Audience {
  readonly price: Writable;
  readonly pointer: string;
}

/** What a row of a break, a tier or a customer may hold beside what is told of the item on its first row. */
const OWN_COLUMNS: ReadonlySet<string> = new Set(['sku', 'price', 'tier', 'customer', 'from']);

/** Gathers the rows of items: the first of a sku is the item, the rows below add prices to it. */
export class ItemRows {
  readonly items: Writable[] = [];
  private readonly indexes = new Map<string, number>();
  private readonly audiences = new Map<string, Audience>();

  constructor(
    private readonly places: Map<string, TablePlace>,
    private readonly errors: InputErrorList,
  ) {}

  add(table: PriceTable, { row, cells }: PriceRow): void {
    const place = { table, row };
    const [sku = '', tier, customer, from] = ['sku', 'tier', 'customer', 'from'].map((column) => cells.get(column));
    if (tier !== undefined && customer !== undefined) return this.wrong(place, 'customer', customer, 'a tier or a customer in one row, not both');
    if (tier === undefined && customer === undefined && from === undefined) return this.begin(place, sku, cells);
    const item = this.items[this.indexes.get(sku) ?? -1];
    if (!item) return this.wrong(place, 'sku', sku, 'a row above with the price of this sku for everybody: without tier, customer and from');
    for (const [column, text] of cells) {
      if (!OWN_COLUMNS.has(column) && item[column] !== fieldValue(column, text)) this.wrong(place, column, text, `an empty cell, or what stands on the first row of ${sku}`);
    }
    const key = JSON.stringify([sku, tier, customer]);
    if (from === undefined) this.beginAudience(place, key, sku, tier, customer, cells);
    else this.addBreak(place, key, from, cells.get('price'));
  }

  private begin(place: TablePlace, sku: string, cells: PriceRow['cells']): void {
    const item: Writable = Object.fromEntries([...cells].map(([field, text]) => [field, fieldValue(field, text)]));
    const index = this.items.push(item) - 1;
    const pointer = `/items/${index}`;
    this.places.set(pointer, place);
    if (this.indexes.has(sku)) return;
    this.indexes.set(sku, index);
    this.audiences.set(JSON.stringify([sku, undefined, undefined]), { price: item, pointer });
  }

  private beginAudience(place: TablePlace, key: string, sku: string, tier: string | undefined, customer: string | undefined, cells: PriceRow['cells']): void {
    const [field, column, name] = tier === undefined ? (['customers', 'customer', customer ?? ''] as const) : (['tiers', 'tier', tier] as const);
    if (this.audiences.has(key)) return this.wrong(place, column, name, `each ${column} once for a sku, or a quantity in from: this one has its price above`);
    const index = this.indexes.get(sku) ?? 0;
    const price: Writable = cells.has('price') ? { price: cells.get('price') } : {};
    const pointer = `/items/${index}/${field}/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`;
    const item = this.items[index] ?? {};
    item[field] = Object.fromEntries([...Object.entries((item[field] ?? {}) as Writable), [name, price]]);
    this.places.set(pointer, place);
    this.audiences.set(key, { price, pointer });
  }

  private addBreak(place: TablePlace, key: string, from: string, price: string | undefined): void {
    const audience = this.audiences.get(key);
    if (!audience) return this.wrong(place, 'from', from, 'a row above with the price of this tier or customer from the first unit on: without from');
    const breaks = (audience.price['breaks'] ??= []) as Writable[];
    breaks.push({ from: fieldValue('from', from), ...(price !== undefined && { price }) });
    this.places.set(`${audience.pointer}/breaks/${breaks.length - 1}`, place);
  }

  private wrong(place: TablePlace, column: string, read: string, fix: string): void {
    cellError(this.errors, place, column, read, fix);
  }
}
