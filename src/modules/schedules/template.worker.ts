import { readRange } from '../../domain/range/read-range.js';
import { templateWorkbook } from '../../domain/schedule/template/template-workbook.js';

export interface TemplateInput {
  /** Document of the range that the example is of. */
  readonly range: unknown;
  readonly ranges: readonly string[];
  /** RFC 3339. */
  readonly writtenAt: string;
}

export async function write({ range: document, ranges, writtenAt }: TemplateInput): Promise<Uint8Array> {
  const range = readRange(document);
  if (!range.ok) throw new Error(`a stored range is not one: ${JSON.stringify(range.error)}`);
  const { code, cores, courseHeight, parameters } = range.value;
  const thinnestFirst = [...cores.values()].toSorted((a, b) => a.width - b.width).map((core) => core.code);
  return templateWorkbook({
    range: { code, cores: thinnestFirst, courseHeight, buckThickness: parameters.buckThickness },
    ranges,
    writtenAt: new Date(writtenAt),
  });
}
