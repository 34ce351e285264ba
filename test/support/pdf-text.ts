import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What a reader of the printed page finds, by poppler's tools: an implementation of PDF that is not ours. */
export function pdfText(bytes: Uint8Array, options: readonly string[] = ['-layout']): string {
  return poppler('pdftotext', bytes, [...options], '-');
}

/** The text of each page with every run of white space as one blank. */
export const pdfPages = (bytes: Uint8Array): string[] =>
  pdfText(bytes)
    .split('\f')
    .slice(0, -1)
    .map((page) => page.replace(/\s+/g, ' ').trim());

/** Page sizes in points, in order. */
export const pdfPageSizes = (bytes: Uint8Array): [number, number][] =>
  [...poppler('pdfinfo', bytes, ['-f', '1', '-l', '9999']).matchAll(/^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts/gm)].map(
    ([, width, height]) => [Number(width), Number(height)],
  );

export const pdfInfo = (bytes: Uint8Array): string => poppler('pdfinfo', bytes, []);

function poppler(tool: string, bytes: Uint8Array, options: string[], ...last: string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'wallcourse-pdf-'));
  try {
    const file = join(folder, 'document.pdf');
    writeFileSync(file, bytes);
    const run = spawnSync(tool, [...options, file, ...last], { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
    if (run.error)
      throw new Error(`${tool} is missing: these tests read the PDF with poppler; install the package poppler-utils`);
    if (run.status !== 0) throw new Error(`${tool} could not read the document: ${run.stderr}`);
    return run.stdout;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
