import type { Nm } from '../../quantity/length.js';
import { printLength } from '../../quantity/print-length.js';
import type { LengthUnit } from '../../quantity/length-unit.js';
import type { ScheduleContext } from '../schedule-context.js';
import type { Relations } from './relations.js';
import type { Entity } from './step-model.js';
import { Unread } from './unread.js';
import type { ModelUnits } from './model-units.js';

/** The layers of a wall from its base line on [nm]. */
export interface Layers {
  readonly layers: readonly { readonly name: string; readonly thickness: number }[];
  /** How they lie beside the wall's line, where that is stated: the base line to the left of it, and whether they are stacked to the left. */
  readonly usage: { readonly offset: number; readonly toLeft: boolean } | null;
}

export interface CoreFound {
  readonly code: string;
  readonly width: Nm;
  /** Thickness of all that is modelled [nm]. */
  readonly thickness: number;
  /** From the middle of the body to the middle of the core, to the left of the line [nm]. */
  readonly fromMiddle: number;
  /** From the axis to the middle of the core, to the left; null where nothing states it. */
  readonly fromAxis: number | null;
}

/** Two thicknesses that agree [nm]. */
const AGREES = 1_000_000;

/** The layers of a wall or of its type; null where its material states no thickness. */
export function readLayers(wall: Entity, { material, type }: Relations, units: ModelUnits): Layers | null {
  const own = material.get(wall.id) ?? material.get(type.get(wall.id)?.id ?? -1);
  const usage = own?.type === 'IfcMaterialLayerSetUsage' ? own : null;
  const set = usage ? usage.optional(0) : own?.type === 'IfcMaterialLayerSet' ? own : null;
  if (!set) return null;
  const layers = set.entities(0).map((layer) => ({
    name: [layer.optional(0)?.text(0), layer.text(3)].filter((name) => name).join(' '),
    thickness: layer.number(1) * units.nm,
  }));
  const solid = layers.filter(({ thickness }) => thickness > 0);
  if (solid.length === 0) return null;
  if (usage && usage.word(1) !== 'AXIS2') throw new Unread('its layers are not stacked across the wall');
  return {
    layers: solid,
    usage: usage && { offset: (usage.optionalNumber(3) ?? 0) * units.nm, toLeft: usage.word(2) !== 'NEGATIVE' },
  };
}

/**
 * The core that a wall's thickness names: that of the one layer whose name says concrete, else the middle one of three; of a single
 * layer, or of a body without layers, the core or the core with its two panels.
 *
 * @param body thickness of the body [nm], null where the wall has only an axis
 */
export function coreOf(found: Layers | null, body: number | null, context: ScheduleContext, unit: LengthUnit): CoreFound {
  const layers = found?.layers ?? (body === null ? [] : [{ name: '', thickness: body }]);
  if (layers.length === 0) throw new Unread('neither a body nor a layer of its material states its thickness');
  const index = coreLayer(layers);
  const total = layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const core = named(layers[index]!.thickness, layers.length === 1, context, unit);
  const before = layers.slice(0, index).reduce((sum, { thickness }) => sum + thickness, 0) + layers[index]!.thickness / 2;
  const toLeft = found?.usage?.toLeft === false ? -1 : 1;
  const aside = Math.abs(before - total / 2) <= AGREES ? 0 : (before - total / 2) * toLeft;
  const bodyIsCore = body !== null && Math.abs(body - core.width) <= AGREES;
  if (body !== null && !bodyIsCore && aside !== 0) {
    if (!found?.usage)
      throw new Unread('its layers differ on the two sides of the concrete and nothing says which side is which');
    if (Math.abs(body - total) > AGREES)
      throw new Unread(
        `its body is ${printLength(Math.round(body), unit)} thick and its layers ${printLength(Math.round(total), unit)}, so where the core lies is not told`,
      );
  }
  return {
    ...core,
    thickness: body ?? total,
    fromMiddle: bodyIsCore ? 0 : aside,
    fromAxis: found?.usage ? found.usage.offset + toLeft * before : null,
  };
}

function coreLayer(layers: Layers['layers']): number {
  const concrete = layers.flatMap(({ name }, index) => (/concrete/i.test(name) ? [index] : []));
  const [only] = concrete;
  if (only !== undefined && concrete.length === 1) return only;
  if (concrete.length > 1) throw new Unread(`${concrete.length} of its layers say concrete: one core is read`);
  if (layers.length === 1) return 0;
  if (layers.length === 3) return 1;
  throw new Unread(`none of its ${layers.length} layers says concrete, and only of three is the middle one taken`);
}

function named(
  thickness: number,
  withPanels: boolean,
  context: ScheduleContext,
  unit: LengthUnit,
): Pick<CoreFound, 'code' | 'width'> {
  const { coreWidths, panel = null } = context;
  const cores = [...(coreWidths ?? [])];
  const near = (extra: Nm) => cores.filter(([, width]) => Math.abs(width + extra - thickness) <= AGREES);
  const bare = near(0);
  const formed = withPanels && panel !== null ? near(2 * panel) : [];
  const fits = bare.length > 0 ? bare : formed;
  const [core] = fits;
  const shown = (length: number): string => printLength(Math.round(length), unit);
  if (bare.length > 0 && formed.length > 0 && bare[0]![0] !== formed[0]![0])
    throw new Unread(
      `its thickness of ${shown(thickness)} is that of the core ${bare[0]![0]} and that of the core ${formed[0]![0]} with its panels: layers would tell`,
    );
  if (core && fits.length === 1) return { code: core[0], width: core[1] };
  const known = cores.map(([code, width]) => `${code} (${shown(width)})`).join(', ');
  const also = withPanels && panel !== null ? `, each also with two panels of ${shown(panel)}` : '';
  throw new Unread(
    `a thickness of ${shown(thickness)} is no core of the range: ${known === '' ? 'none is known' : known}${also}`,
  );
}
