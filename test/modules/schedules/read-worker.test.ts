import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { read } from '../../../src/modules/schedules/read.worker.js';
import { rectangle } from '../../support/schedule-documents.js';

describe('the reader of uploads', () => {
  it('knows the widths of the range that is named: a wall is placed by its tee', async () => {
    const range: unknown = JSON.parse(readFileSync('shared/samples/heron-16.range.json', 'utf8'));
    const document = rectangle();
    document.walls.push({ mark: 'P', core: '6', length: 144, start: { joint: 'tee', on: 'A', at: 120, side: 'left' } });
    const bytes = new TextEncoder().encode(JSON.stringify(document));
    const answer = await read({ parts: [{ name: 'schedule.json', mediaType: 'application/json', bytes }], ranges: [range] });
    // A is 11 in thick with its outer face on y = 0; half of P's 11 in lies to the right of x = 120.
    expect(answer).toMatchObject({ ok: true, schedule: { walls: [{}, {}, {}, {}, { from: { x: 125.5 * 25.4e6, y: 11 * 25.4e6 } }] } });
  });
});
