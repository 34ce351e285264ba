import { createHash } from 'node:crypto';
import type { DrawingKind, DrawingType } from './drawings.schemas.js';

const ENDINGS: Readonly<Record<DrawingType, string>> = {
  'image/svg+xml': 'svg',
  'image/png': 'png',
  'image/vnd.dxf': 'dxf',
  'application/pdf': 'pdf',
};
/** Browsers show these; a DXF is for a drawing program. */
const SHOWN: readonly DrawingType[] = ['image/svg+xml', 'image/png', 'application/pdf'];
const UNSAFE = /[^A-Za-z0-9._-]+/g;
const LONGEST_REF = 60;

/** `inline; filename="J-000123-elevation-A1.svg"`: of a user's own mark only letters, digits, dots and dashes go into the name. */
export function dispositionOf(job: string, kind: DrawingKind, ref: string, type: DrawingType): string {
  const safe = ref.normalize('NFD').replace(UNSAFE, '_').slice(0, LONGEST_REF);
  return `${SHOWN.includes(type) ? 'inline' : 'attachment'}; filename="${job}-${kind}-${safe}.${ENDINGS[type]}"`;
}

/** Entity tag of a file's bytes. */
export const fileTag = (bytes: Uint8Array): string => `"${createHash('sha256').update(bytes).digest('base64url')}"`;

/** Whether If-None-Match names the tag, weakly compared; `*` names any. */
export const isKnown = (ifNoneMatch: string | undefined, tag: string): boolean =>
  ifNoneMatch !== undefined &&
  ifNoneMatch.split(',').some((part) => part.trim() === '*' || part.trim().replace(/^W\//, '') === tag);
