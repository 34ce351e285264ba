import { describe, expect, it } from '@jest/globals';
import { SaxesParser } from 'saxes';
import { renderSvg, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing } from '../../../src/domain/drawing/index.js';
import { SHEET_HEADER, drawnWall } from '../../support/drawn-wall.js';
import { ruleRange } from '../../support/rule-range.js';

const NASTY = `<script>alert("x")</script> & 'co' \u0000\u0007\ud800 ]]>`;

function elevation(mark: string, jobName: string): Drawing {
  const { wall, storey } = drawnWall({
    mark,
    length: 240,
    courses: 6,
    openings: [{ mark: `W<1>&"`, at: 60, width: 60, sill: 32, height: 48 }],
  });
  return wallElevation(wall, storey, ruleRange(), 'in', { ...SHEET_HEADER, jobName });
}

/** Parses strictly; answers element names, attribute values and the text inside `text` elements. */
function read(xml: string): { names: Set<string>; texts: string[]; subjects: string[]; root: Record<string, string> } {
  const parser = new SaxesParser({ xmlns: true });
  const answer = {
    names: new Set<string>(),
    texts: [] as string[],
    subjects: [] as string[],
    root: {} as Record<string, string>,
  };
  let inText = false;
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    answer.names.add(tag.name);
    const attributes = Object.fromEntries(Object.entries(tag.attributes).map(([name, value]) => [name, value.value]));
    if (tag.name === 'svg') answer.root = attributes;
    if (attributes['data-subject'] !== undefined) answer.subjects.push(attributes['data-subject']);
    inText = tag.name === 'text';
    if (inText) answer.texts.push('');
  });
  parser.on('text', (text) => {
    if (inText) answer.texts[answer.texts.length - 1] += text;
  });
  parser.on('closetag', () => {
    inText = false;
  });
  parser.write(xml).close();
  return answer;
}

describe('renderSvg', () => {
  it('is well-formed XML of known elements only, whatever the names say', () => {
    const { names, texts } = read(renderSvg(elevation(NASTY, NASTY)));
    expect([...names].sort()).toEqual(
      ['circle', 'desc', 'g', 'line', 'path', 'polygon', 'polyline', 'rect', 'svg', 'text', 'title'].filter((name) =>
        names.has(name),
      ),
    );
    expect(names.has('script')).toBe(false);
    expect(texts.some((text) => text.includes('<script>alert("x")</script> & '))).toBe(true);
    expect(texts).toContain(`W<1>&"`);
  });

  it('is sized in millimetres of paper at its scale', () => {
    const drawing = elevation('A', 'Job');
    const { root } = read(renderSvg(drawing));
    const width = drawing.width / drawing.scale / 1e6;
    expect(Number(root['width']?.replace('mm', ''))).toBeCloseTo(width, 3);
    expect(root['viewBox']?.split(' ').map(Number)[2]).toBeCloseTo(width, 3);
  });

  it('names every piece and opening', () => {
    const { wall } = drawnWall({ mark: 'A', length: 240, courses: 6 });
    const { subjects } = read(renderSvg(elevation('A', 'Job')));
    for (const piece of wall.courses[0]?.pieces ?? []) expect(subjects).toContain(`piece:${piece.id}`);
    expect(subjects).toContain(`opening:W<1>&"`);
  });

  it('is the same text twice and holds no number a reader cannot parse', () => {
    const svg = renderSvg(elevation('A', 'Job'));
    expect(renderSvg(elevation('A', 'Job'))).toBe(svg);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|[ ",][-\d.]+e[+-]?\d/);
  });
});
