import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { layersOf, solveStack, type Layer } from './stack.js';
import type { Stack } from './laid.js';

export interface WallStack {
  readonly stack: Stack;
  readonly alternatives: readonly Stack[];
  readonly layers: readonly Layer[];
  /** False where no stack meets the height within tolerance, or where the courses cannot line up with the walls it meets. */
  readonly coursed: boolean;
}

/** A wall's height and base, and the group of walls it meets. */
export interface StackRequest {
  readonly height: Nm;
  readonly base: Nm;
  readonly group: number;
}

/**
 * The lower wall's stack as the bottom part of its neighbours' layers, so that courses line up at the corners; null where its top
 * falls where no course of theirs can end.
 */
function sharedPart(asked: Nm, tall: readonly Layer[], range: FormRange): Stack | null {
  const { stackTolerance, minRip } = range.parameters;
  let strips = 0;
  for (const [index, layer] of tall.entries()) {
    if (layer.kind === 'strip') {
      strips += 1;
      continue;
    }
    const top = layer.bottom + layer.height;
    if (Math.abs(top - asked) <= stackTolerance) {
      return { courses: layer.course, strips, ripped: layer.ripped ? layer.height : null, height: top, deviation: top - asked };
    }
    if (asked > layer.bottom && asked < top) {
      const ripped = asked - layer.bottom;
      const onStrip = tall[index - 1]?.kind === 'strip';
      return ripped >= minRip && !onStrip ? { courses: layer.course, strips, ripped, height: asked, deviation: 0 } : null;
    }
  }
  return null;
}

const partLayers = (stack: Stack, tall: readonly Layer[]): Layer[] =>
  tall
    .filter((layer) => layer.bottom < stack.height)
    .map((layer) => (layer.kind === 'course' && layer.course === stack.courses && stack.ripped !== null ? { ...layer, height: stack.ripped, ripped: true } : layer));

/**
 * Stacks of all walls of a storey. Walls that meet and stand on one base share their courses: the tallest decides, the lower ones
 * take the bottom part of its layers.
 */
export function storeyStacks(requests: readonly StackRequest[], range: FormRange): WallStack[] {
  const tallest = new Map<string, Nm>();
  const key = ({ group, base }: StackRequest): string => `${group}/${base}`;
  for (const request of requests) tallest.set(key(request), Math.max(tallest.get(key(request)) ?? 0, request.height));
  const solved = new Map<string, WallStack>();
  const solve = (request: StackRequest): WallStack => {
    const own = solveStack(request.height, range);
    const alone: WallStack = { stack: own.chosen, alternatives: own.alternatives, layers: layersOf(own.chosen, range), coursed: own.withinTolerance };
    const tall = tallest.get(key(request))!;
    if (request.height === tall) return alone;
    const layers = layersOf(solveStack(tall, range).chosen, range);
    const shared = sharedPart(request.height, layers, range);
    if (!shared) return { ...alone, coursed: false };
    const same = (stack: Stack): boolean => stack.courses === shared.courses && stack.strips === shared.strips && stack.ripped === shared.ripped;
    const alternatives = [own.chosen, ...own.alternatives].filter((stack) => !same(stack));
    return { stack: shared, alternatives, layers: partLayers(shared, layers), coursed: true };
  };
  return requests.map((request) => {
    const id = `${key(request)}/${request.height}`;
    const known = solved.get(id) ?? solve(request);
    solved.set(id, known);
    return known;
  });
}
