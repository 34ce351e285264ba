import { SaxesParser } from 'saxes';
import { FileRefusal } from '../file-refusal.js';

export interface XmlHandler {
  readonly open?: (name: string, attributes: Readonly<Record<string, string>>) => void;
  readonly text?: (text: string) => void;
  readonly close?: (name: string) => void;
}

/** Deeper nesting and more attributes than any workbook has: what they would cost is memory. */
const MAX_DEPTH = 64;
const MAX_ATTRIBUTES = 100;

/** Name without its prefix: `x:row` is `row`. */
const local = (name: string): string => name.slice(name.indexOf(':') + 1);

/**
 * Reads XML as it inflates. A document type declaration is refused unread (entities could stand for anything), and so is XML that is
 * not well formed. Yields after every slice so that a caller can hand on what it has gathered and stop.
 */
export async function* xmlEvents(
  file: string,
  part: string,
  bytes: AsyncIterable<Uint8Array>,
  handler: XmlHandler,
): AsyncGenerator<void> {
  const parser = new SaxesParser<{ position: false; xmlns: false }>({ position: false, xmlns: false });
  parser.on('doctype', () => {
    throw new FileRefusal(
      'unreadable',
      file,
      `a document type declaration in ${part}`,
      'a workbook without document type declarations: save it again as .xlsx',
    );
  });
  parser.on('error', () => {
    throw malformed(file, part);
  });
  let [depth, attributesOfTag] = [0, 0];
  parser.on('opentagstart', () => {
    depth += 1;
    attributesOfTag = 0;
    if (depth > MAX_DEPTH) throw malformed(file, part);
  });
  parser.on('attribute', () => {
    attributesOfTag += 1;
    if (attributesOfTag > MAX_ATTRIBUTES) throw malformed(file, part);
  });
  parser.on('opentag', ({ name, attributes }) => handler.open?.(local(name), attributes));
  parser.on('text', (text) => handler.text?.(text));
  parser.on('cdata', (text) => handler.text?.(text));
  parser.on('closetag', ({ name }) => {
    depth -= 1;
    handler.close?.(local(name));
  });
  const decoder = new TextDecoder('utf-8', { fatal: true });
  for await (const slice of bytes) {
    parser.write(decoded(decoder, slice, file, part));
    yield;
  }
  parser.write(decoded(decoder, undefined, file, part)).close();
  yield;
}

/** Reads a whole part for its events. */
export async function readXml(file: string, part: string, bytes: AsyncIterable<Uint8Array>, handler: XmlHandler): Promise<void> {
  for await (const _ of xmlEvents(file, part, bytes, handler));
}

function decoded(decoder: InstanceType<typeof TextDecoder>, slice: Uint8Array | undefined, file: string, part: string): string {
  try {
    return slice ? decoder.decode(slice, { stream: true }) : decoder.decode();
  } catch {
    throw malformed(file, part);
  }
}

const malformed = (file: string, part: string): FileRefusal =>
  new FileRefusal('unreadable', file, part, 'a workbook that opens: its XML is damaged; save it again as .xlsx');
