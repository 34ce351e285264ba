import Big from 'big.js';
import type { UnitKind } from '../range/range.js';
import type { MaterialLine } from '../reinforcement/material-line.js';
import type { UnitCount } from '../takeoff/takeoff.js';
import type { QuoteLine, Selling } from './quote.js';

const UNIT_WORDS: Readonly<Record<UnitKind, string>> = {
  straight: 'straight form',
  corner: 'square corner form',
  'corner-pair': 'paired corner blank',
  'corner-hinged': 'hinged corner form',
  strip: 'height strip',
  'end-closure': 'end closure',
  ledge: 'ledge form',
  'taper-top': 'taper-top form',
};

const MATERIAL_WORDS: Readonly<Record<MaterialLine['kind'], string>> = {
  tape: 'tape',
  'wire-tie': 'wire ties',
  'cable-tie': 'cable ties',
  strap: 'strap',
  board: 'board',
  foam: 'adhesive foam',
  cover: 'masking cover',
  bar: 'reinforcing bar',
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `Square corner form, core 6, left hand`. */
export function unitText({ kind, core, hand }: Pick<UnitCount, 'kind' | 'core' | 'hand'>): string {
  return `${capital(UNIT_WORDS[kind])}, core ${core}${hand ? `, ${hand} hand` : ''}`;
}

/** `Spare straight form, core 6: 3, of which 2 come with the bundles above`. */
export function spareText(unit: Pick<UnitCount, 'kind' | 'core' | 'hand' | 'spare'>, { covered }: Pick<Selling, 'covered'>): string {
  const text = unitText(unit);
  const within = covered > 0 ? `, of which ${covered} ${covered === 1 ? 'comes' : 'come'} with the bundles above` : '';
  return `Spare ${text.charAt(0).toLowerCase()}${text.slice(1)}: ${unit.spare}${within}`;
}

/** `Tape 4 in, pack of 150 ft`; `Reinforcing bar #4, bars of 20 ft cut into 36 pieces`. */
export function materialText(
  { kind, size }: Pick<MaterialLine, 'kind' | 'size'>,
  { pack, neededUnit, cutting }: Pick<Selling, 'pack' | 'neededUnit' | 'cutting'>,
): string {
  const name = `${capital(MATERIAL_WORDS[kind])} ${size}`;
  if (pack === null) return name;
  const contents = `${pack}${neededUnit === 'ft' ? ' ft' : ''}`;
  if (!cutting) return `${name}, pack of ${contents}`;
  const pieces = cutting.pieces.reduce((sum, { count }) => sum + count, 0);
  return `${name}, bars of ${contents} cut into ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`;
}

/** `Straight form, core 6; 7 loose at 10 % more; less 5 %`: why the amount is not quantity times unit price. */
export function pricedText(text: string, { looseQuantity, surchargeRate, discountRate }: Pick<QuoteLine, 'looseQuantity' | 'surchargeRate' | 'discountRate'>): string {
  const loose = surchargeRate === null || isNought(surchargeRate) ? '' : `; ${looseQuantity} loose at ${percent(surchargeRate)} more`;
  return `${text}${loose}${discountRate === null || isNought(discountRate) ? '' : `; less ${percent(discountRate)}`}`;
}

const isNought = (rate: string): boolean => new Big(rate).eq(0);

const percent = (rate: string): string => `${new Big(rate).times(100).toFixed()} %`;
