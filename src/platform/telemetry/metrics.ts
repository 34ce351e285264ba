type Labels = Readonly<Record<string, string | number>>;

interface Series {
  readonly help: string;
  readonly type: 'counter' | 'gauge';
  readonly values: Map<string, number>;
}

const escaped = (value: string | number): string => String(value).replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n');

function rendered(labels: Labels): string {
  const pairs = Object.entries(labels).map(([name, value]) => `${name}="${escaped(value)}"`);
  return pairs.length === 0 ? '' : `{${pairs.join(',')}}`;
}

/** Counters of this process, told at /metrics in the Prometheus text format. */
export class Metrics {
  private readonly series = new Map<string, Series>();
  private readonly gauges = new Map<string, { readonly help: string; readonly read: () => number }>();

  count(name: string, help: string, labels: Labels = {}, by = 1): void {
    let series = this.series.get(name);
    if (!series) this.series.set(name, (series = { help, type: 'counter', values: new Map() }));
    const key = rendered(labels);
    series.values.set(key, (series.values.get(key) ?? 0) + by);
  }

  /** A value that is read when it is asked for. */
  gauge(name: string, help: string, read: () => number): void {
    this.gauges.set(name, { help, read });
  }

  text(): string {
    const lines: string[] = [];
    for (const [name, series] of this.series) {
      lines.push(`# HELP ${name} ${series.help}`, `# TYPE ${name} ${series.type}`);
      for (const [labels, value] of series.values) lines.push(`${name}${labels} ${value}`);
    }
    for (const [name, { help, read }] of this.gauges) lines.push(`# HELP ${name} ${help}`, `# TYPE ${name} gauge`, `${name} ${read()}`);
    return `${lines.join('\n')}\n`;
  }
}
