import type { Nm } from '../quantity/length.js';

/** Bounds of one job. Past them a schedule is refused before it is laid out: split it into several jobs. */
export const MAX_WALLS = 10_000;
export const MAX_OPENINGS = 50_000;
export const MAX_FEATURES = 50_000;
export const MAX_STOREYS = 200;
/** Characters. */
export const MAX_MARK = 40;
export const MAX_NAME = 200;
/** One kilometre of wall in one line, and a hundred metres of height. */
export const MAX_WALL_LENGTH: Nm = 1_000_000_000_000;
export const MAX_WALL_HEIGHT: Nm = 100_000_000_000;
/** Length times height over all walls: about a million forms [m²]. */
export const MAX_FACE_M2 = 500_000;
/** Ends closer than this meet; a wall shorter than this has no length. */
export const MEETING_DISTANCE: Nm = 1_000_000;
/** Unknown columns and keys that are listed. */
export const MAX_UNKNOWN = 200;
/** An upload: files, and bytes of all of them together. */
export const MAX_FILES = 20;
export const MAX_FILE_BYTES = 32 * 1024 * 1024;
