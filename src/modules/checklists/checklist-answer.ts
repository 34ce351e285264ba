import type { ItemRow } from './checklists.repository.js';
import type { ChecklistItemAnswer, ChecklistAnswer } from './checklists.schemas.js';
import type { Standing } from './readiness.js';

export const itemAnswer = (jobId: string, row: ItemRow): ChecklistItemAnswer => ({
  id: row.item,
  n: row.n,
  phase: row.phase,
  rule: row.rule,
  storey: row.storey,
  wall: row.wall,
  course: row.course,
  text: row.text,
  counts: row.counts.map(({ sku, quantity, unit, atMm = [] }) => ({ sku, quantity, unit, atMm: [...atMm] })),
  basis: row.basis,
  tick: tickAnswer(jobId, row),
});

function tickAnswer(jobId: string, { item, person_name: by, ticked_at: at, note, photo_sha256: photo }: ItemRow): ChecklistItemAnswer['tick'] {
  if (by === null || at === null) return null;
  return { by, at: new Date(at).toISOString(), note, photo: photo === null ? null : `/v1/jobs/${jobId}/checklist/${item}/photo` };
}

export const standingAnswer = ({ openHolds, ...standing }: Standing): Omit<ChecklistAnswer, 'items' | 'next'> => ({
  revision: standing.revision,
  version: standing.version,
  readyToPour: standing.readyToPour,
  ticked: standing.ticked,
  total: standing.total,
  openHolds: openHolds.map(({ id, number, question }) => ({ ticket: id, number, question })),
});
