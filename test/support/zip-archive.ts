import { crc32, deflateRawSync } from 'node:zlib';

export interface ZipPart {
  readonly path: string;
  readonly content: string | Uint8Array;
  /** What the directory says of the inflated size, where it lies. */
  readonly claimedSize?: number;
  /** Flags of the entry where they are other than UTF-8 names, its checksum where it lies, and what follows its name in the directory. */
  readonly flags?: number;
  readonly claimedCrc?: number;
  readonly extra?: Uint8Array;
}

/** A zip archive byte by byte (local headers, central directory, end record), so that a test can make what no writer would. */
export function zipArchive(parts: readonly ZipPart[]): Uint8Array {
  const locals: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { path, content, claimedSize, flags = 0x0800, claimedCrc, extra = new Uint8Array() } of parts) {
    const bytes = Buffer.from(content as Uint8Array);
    const packed = deflateRawSync(bytes, { level: 9 });
    const name = Buffer.from(path);
    const size = claimedSize ?? bytes.length;
    const fields = Buffer.alloc(26);
    fields.writeUInt16LE(20, 0);
    fields.writeUInt16LE(flags, 2);
    fields.writeUInt16LE(8, 4);
    fields.writeUInt32LE(claimedCrc ?? crc32(bytes), 10);
    fields.writeUInt32LE(packed.length, 14);
    fields.writeUInt32LE(size, 18);
    fields.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from('PK\u0003\u0004'), fields, name, packed]);
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE(offset, 10);
    const listed = Buffer.from(fields);
    listed.writeUInt16LE(extra.length, 24);
    directory.push(Buffer.concat([Buffer.from('PK\u0001\u0002\u0014\u0000', 'latin1'), listed, rest, name, extra]));
    locals.push(local);
    offset += local.length;
  }
  const central = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.write('PK\u0005\u0006', 'latin1');
  end.writeUInt16LE(parts.length, 8);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(offset, 16);
  return new Uint8Array(Buffer.concat([...locals, central, end]));
}

const XML = '<?xml version="1.0" encoding="UTF-8"?>';

/** The smallest workbook: sheets by name with the XML of their rows, and any other parts. */
export function workbookParts(sheets: Readonly<Record<string, string>>, more: readonly ZipPart[] = []): ZipPart[] {
  const names = Object.keys(sheets);
  return [
    { path: '[Content_Types].xml', content: `${XML}<Types/>` },
    {
      path: 'xl/workbook.xml',
      content: `${XML}<workbook xmlns:r="r"><sheets>${names.map((name, index) => `<sheet name="${name}" sheetId="${index + 1}" r:id="r${index + 1}"/>`).join('')}</sheets></workbook>`,
    },
    {
      path: 'xl/_rels/workbook.xml.rels',
      content: `${XML}<Relationships>${names.map((_, index) => `<Relationship Id="r${index + 1}" Type="x/worksheet" Target="worksheets/sheet${index + 1}.xml"/>`).join('')}</Relationships>`,
    },
    ...names.map((name, index) => ({ path: `xl/worksheets/sheet${index + 1}.xml`, content: `${XML}<worksheet><sheetData>${sheets[name]}</sheetData></worksheet>` })),
    ...more,
  ];
}

/** Rows of inline texts; numbers stay numbers. */
export function sheetXml(rows: readonly (readonly (string | number)[])[]): string {
  const text = (value: string): string => value.replace(/&/g, '&amp;').replace(/</g, '&lt;');
  const cell = (value: string | number): string => (typeof value === 'number' ? `<c><v>${value}</v></c>` : `<c t="inlineStr"><is><t>${text(value)}</t></is></c>`);
  return rows.map((row) => `<row>${row.map(cell).join('')}</row>`).join('');
}
