import { Refusal } from '../../platform/refusals/refusal.js';

interface Range {
  readonly type: string;
  readonly quality: number;
}

/** The media types an Accept header names, as `type/subtype`, `type/*` or the star of all. */
function ranges(accept: string): Range[] {
  return accept.split(',').map((part) => {
    const [type = '', ...parameters] = part.split(';').map((piece) => piece.trim().toLowerCase());
    const q = parameters.find((parameter) => parameter.startsWith('q='));
    const quality = q === undefined ? 1 : Number(q.slice(2));
    return { type, quality: Number.isFinite(quality) ? quality : 0 };
  });
}

function qualityOf(offer: string, asked: readonly Range[]): number {
  const [family] = offer.split('/');
  for (const type of [offer, `${family}/*`, '*/*']) {
    const range = asked.find((candidate) => candidate.type === type);
    if (range) return range.quality;
  }
  return 0;
}

/** The offer the client likes best, the first of equals; refused where it accepts none. */
export function negotiated<T extends string>(accept: string | undefined, offers: readonly [T, ...T[]]): T {
  if (accept === undefined || accept.trim() === '') return offers[0];
  const asked = ranges(accept);
  const best = offers
    .map((offer) => ({ offer, quality: qualityOf(offer, asked) }))
    .reduce((a, b) => (b.quality > a.quality ? b : a));
  if (best.quality <= 0) throw new Refusal('not-acceptable', `This is told as ${offers.join(', ')}.`);
  return best.offer;
}
