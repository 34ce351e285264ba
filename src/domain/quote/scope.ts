import type { MaterialKind } from '../range/range.js';
import type { MaterialLine } from '../reinforcement/material-line.js';
import type { StoreyConcrete } from '../takeoff/takeoff.js';
import type { FreightPlan } from './freight.js';
import type { QuoteFreight, ScopeItem, ScopeStatus } from './quote.js';

/** Exact: 1 yd = 0.9144 m. */
const M3_PER_YD3 = 0.9144 ** 3;

/**
 * What the quote holds and what it does not: every part of a poured wall that somebody has to supply, none in silence.
 *
 * @param materials what the rules consume
 * @param concrete  what is to be ordered, by storey
 * @param freight   what is said of freight
 * @source decisions: the quote says what is in and what is not
 */
export function scopeOf(materials: readonly MaterialLine[], concrete: readonly StoreyConcrete[], freight = NO_FREIGHT): readonly ScopeItem[] {
  const has = (kind: MaterialKind): boolean => materials.some((line) => line.kind === kind);
  return [
    scope('forms', 'included', 'Forms, corner units, strips and end closures as listed, with spares.'),
    scope('reinforcement of the forms', 'included', 'Tape, ties, straps and boards as listed.'),
    has('foam')
      ? scope('adhesive foam', 'included', 'As listed; guns and cleaner are by others.')
      : scope('adhesive foam', 'by others', 'No rule of this job takes any.'),
    scope('footings', 'by others', 'Level and straight, with dowels in place, before course 1.'),
    scope('concrete', 'by others', concreteNote(concrete)),
    scope('pump', 'by others', 'With a reduced hose for the core width.'),
    scope('bars', 'by others', has('bar') ? 'Wall bars and dowels are by others; only the pin bars at tees are listed.' : 'Wall bars and dowels.'),
    scope('buck lumber', 'by others', 'Bucks, their spreaders and diagonals.'),
    scope('shores', 'by others', 'Posts under lintels until the concrete carries.'),
    scope('braces with scaffold planks', 'optional', 'For sale or rent, priced on request.'),
    scope('fasteners', 'by others', 'Screws for straps, boards and bucks.'),
    scope('ledgers and anchor bolts', 'by others', 'Set before the pour.'),
    scope('masonry ties', 'by others', 'Where masonry stands before the wall.'),
    scope('membrane', 'by others', 'Below grade, of a kind that does not attack foam.'),
    scope('sleeves', 'by others', 'For every pipe and duct, set before the pour.'),
    scope('labour', 'by others', 'Laying, bracing, placing and finishing.'),
    scope('unloading', 'by others', 'By hand or by machine on the site.'),
    freight,
  ];
}

const scope = (item: string, status: ScopeStatus, note: string): ScopeItem => ({ item, status, note });

const NO_FREIGHT = scope('freight', 'by others', 'No freight is priced here.');

/** What the quote says of freight: what is brought how, or why it is left to others. */
export function freightScope(plan: FreightPlan): ScopeItem {
  if ('freight' in plan) return scope('freight', 'included', freightNote(plan.freight));
  if (!('absent' in plan)) return NO_FREIGHT;
  if (plan.absent === 'place-not-stated') return scope('freight', 'by others', 'No place is stated: no freight is priced.');
  if (plan.absent === 'place-without-zone') return scope('freight', 'by others', `${plan.place} is in no zone of the price list: no freight is priced.`);
  return NO_FREIGHT;
}

function freightNote({ zone, deliveries, notMeasured }: QuoteFreight): string {
  const trucks = deliveries.reduce((sum, delivery) => sum + delivery.trucks, 0);
  const last = deliveries.at(-1)?.loads.at(-1);
  const how = `To zone ${zone} on ${counted(trucks, 'truck', 'trucks')} in ${counted(deliveries.length, 'delivery', 'deliveries')}`;
  const fill = last ? `, the last one ${Math.floor(last.fill * 100)} % full` : '';
  const unknown = notMeasured.length === 0 ? '' : ` Loaded as if they took no room or had no weight, which the price list does not state: ${notMeasured.join(', ')}.`;
  return `${how}${fill}.${unknown}`;
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

function concreteNote(concrete: readonly StoreyConcrete[]): string {
  if (concrete.length === 0) return 'None counted.';
  const total = concrete.reduce((sum, { orderYd3 }) => sum + orderYd3, 0);
  const storeys = concrete.map(({ storey, orderYd3 }) => `${storey} ${volumeText(orderYd3)}`).join('; ');
  return `Order ${volumeText(total)}${concrete.length > 1 ? `: ${storeys}` : ''}.`;
}

const volumeText = (yd3: number): string => `${Number(yd3.toFixed(3))} yd³ (${(yd3 * M3_PER_YD3).toFixed(2)} m³)`;
