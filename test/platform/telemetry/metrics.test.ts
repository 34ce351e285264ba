import { describe, expect, it } from '@jest/globals';
import { Metrics } from '../../../src/platform/telemetry/metrics.js';

describe('Metrics', () => {
  it('tells counters and gauges in the Prometheus text format, labels escaped', () => {
    const metrics = new Metrics();
    metrics.count('jobs_total', 'Jobs', { state: 'done' });
    metrics.count('jobs_total', 'Jobs', { state: 'done' }, 2);
    metrics.count('jobs_total', 'Jobs', { state: 'a "b"\\\n' });
    let waiting = 3;
    metrics.gauge('waiting', 'Waiting', () => waiting);
    waiting = 4;
    expect(metrics.text()).toBe(
      ['# HELP jobs_total Jobs', '# TYPE jobs_total counter', 'jobs_total{state="done"} 3', 'jobs_total{state="a \\"b\\"\\\\\\n"} 1', '# HELP waiting Waiting', '# TYPE waiting gauge', 'waiting 4', ''].join('\n'),
    );
  });
});
