import { RowReader } from './row-reader.js';
import type { DeclaredJoint } from './schedule.js';
import { MAX_MARK } from './schedule-limits.js';

export const JOINT_KEYS = ['joint', 'turn', 'with', 'on', 'at', 'side'] as const;
export const WITH_KEYS = ['wall', 'end'] as const;

/** A joint declared at one end of a wall; null where none is, undefined where it is wrong. References are checked when walls are placed. */
export function readJoint(wall: RowReader, end: 'start' | 'end'): DeclaredJoint | null | undefined {
  const reader = wall.object(end, JOINT_KEYS);
  if (!reader) return reader;
  const joint = reader.choice('joint', ['corner', 'tee', 'free'] as const);
  if (joint === 'corner') return readCorner(reader);
  if (joint === 'tee') return readTee(reader);
  return joint === 'free' ? { joint } : undefined;
}

function readCorner(reader: RowReader): DeclaredJoint | undefined {
  const turn = reader.turn('turn');
  const partner = reader.object('with', WITH_KEYS);
  if (partner === null) return reader.fail('with', 'the wall and end this corner is made with: { "wall": "B", "end": "start" }');
  const wall = partner?.text('wall', MAX_MARK);
  const end = partner?.choice('end', ['start', 'end'] as const);
  return turn === undefined || wall === undefined || end === undefined
    ? undefined
    : { joint: 'corner', turn, with: { wall, end } };
}

function readTee(reader: RowReader): DeclaredJoint | undefined {
  const on = reader.text('on', MAX_MARK);
  const at = reader.length('at');
  const side = reader.choice('side', ['left', 'right'] as const);
  return on === undefined || at === undefined || side === undefined ? undefined : { joint: 'tee', on, at, side };
}
