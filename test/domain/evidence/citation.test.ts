import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { SOURCE_TITLES, citation, citationText } from '../../../src/domain/evidence/citation.js';

const bibliography = JSON.parse(readFileSync('shared/reference/bibliography.json', 'utf8')) as { sources: { key: string; title: string; read: string; through?: string[] }[] };

describe('citation', () => {
  it('takes key and clause apart', () => {
    expect(citation('aci-347-04 §2.2.2')).toEqual({ key: 'aci-347-04', clause: '§2.2.2' });
    expect(citation('common practice')).toEqual({ key: null, clause: '' });
    expect(citation('toString')).toEqual({ key: null, clause: '' });
  });

  it('prints titles', () => {
    expect(citationText('aci-347-04 §2.2.2')).toBe('ACI 347-04, Guide to Formwork for Concrete, §2.2.2');
    expect(citationText('nunnally')).toBe('Construction Methods and Management, chapter 12, Concrete Form Design');
    expect(citationText('statics')).toBe('statics');
  });
});

describe('bibliography', () => {
  it('is the list of titles the program prints', () => {
    expect(Object.fromEntries(bibliography.sources.map(({ key, title }) => [key, title]))).toEqual(SOURCE_TITLES);
  });

  it('says how each source was read, and through which others', () => {
    for (const source of bibliography.sources) {
      expect(['text', 'through', 'memory']).toContain(source.read);
      expect(source.read === 'through').toBe(source.through !== undefined);
      for (const key of source.through ?? []) expect(Object.keys(SOURCE_TITLES)).toContain(key);
    }
  });
});
