/** note: printed. advise: a ticket, the quote may be accepted. hold: a ticket, the quote cannot be accepted until it is answered. */
export type Severity = 'note' | 'advise' | 'hold';

/** Severity of every finding code: the only place where one is decided. */
export const SEVERITY = {
  'turn-not-made': 'hold',
  'turn-acute': 'hold',
  'walls-cross': 'hold',
  'wall-overlap': 'hold',
  'plan-open': 'hold',
  'radius-tight': 'hold',
  'run-too-short': 'hold',
  'opening-too-wide': 'hold',
  'wall-beyond-tables': 'hold',
  'backfill-beyond-tables': 'hold',
  'soil-not-listed': 'hold',
  'site-beyond-method': 'hold',
  'pressure-over-rating': 'hold',
  'outside-method': 'hold',
  'tee-skewed': 'advise',
  'radius-wall': 'advise',
  'mitre-odd': 'advise',
  'gable-steep': 'advise',
  'core-change': 'advise',
  'opening-near-corner': 'advise',
  'pier-narrow': 'advise',
  'single-lift-height': 'advise',
  'height-not-coursed': 'advise',
  'height-ripped': 'note',
  seam: 'note',
  'piece-short': 'note',
  'site-not-stated': 'note',
  'pour-not-stated': 'note',
  'full-liquid-head': 'note',
  'slump-stiff': 'note',
  'stone-large': 'note',
  'concrete-hot': 'note',
  'evaporation-high': 'note',
  'discharge-late': 'note',
  'pump-outruns-rise': 'note',
  'tee-tie-short': 'note',
  'bars-not-checked': 'note',
  'lintel-load-not-stated': 'note',
} as const satisfies Record<string, Severity>;

export type FindingCode = keyof typeof SEVERITY;

/**
 * Something about the job that a person must know. It carries a code, numbers and a place, never prose: the words are
 * rendered from the code by `finding-text.ts`.
 */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly storey: string | null;
  /** Mark of the wall, or of the first of several (the others are in `walls`). */
  readonly wall: string | null;
  readonly walls: readonly string[];
  readonly course: number | null;
  /** Station along the wall's axis from its own `from` node [mm]. */
  readonly atMm: number | null;
  /** Deciding numbers; each key ends in its unit (`turnDeg`, `pressurePsf`, `lengthMm`). Strings for names such as a core code. */
  readonly numbers: Readonly<Record<string, number | string>>;
  /** Key of the bibliography, `common practice`, `statics` or `geometry`. */
  readonly source: string;
}

export interface FindingPlace {
  readonly storey?: string | null;
  readonly wall?: string | null;
  readonly walls?: readonly string[];
  readonly course?: number | null;
  readonly atMm?: number | null;
  readonly numbers?: Readonly<Record<string, number | string>>;
  readonly source?: string;
  /** Only where one code has two severities: `core-change` at a corner, and beds that miss each other at a corner, are holds. */
  readonly severity?: Severity;
}

export function finding(code: FindingCode, place: FindingPlace = {}): Finding {
  return {
    code,
    severity: place.severity ?? SEVERITY[code],
    storey: place.storey ?? null,
    wall: place.wall ?? place.walls?.[0] ?? null,
    walls: place.walls ?? (place.wall ? [place.wall] : []),
    course: place.course ?? null,
    atMm: place.atMm ?? null,
    numbers: place.numbers ?? {},
    source: place.source ?? 'geometry',
  };
}
