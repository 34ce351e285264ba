import { describe, expect, it } from '@jest/globals';
import { CEMENT_NAMES, cementGroup } from '../../../../src/domain/engineering/aci-347-04/cement-group.js';

describe('cementGroup', () => {
  it.each([
    { name: 'I', group: 'portland-i-ii-iii' },
    { name: 'type ii', group: 'portland-i-ii-iii' },
    { name: ' TYPE  III ', group: 'portland-i-ii-iii' },
    { name: 'I/II', group: 'portland-i-ii-iii' },
    { name: 'V', group: 'other-or-low-blend' },
    { name: 'Type IL', group: 'other-or-low-blend' },
    { name: 'blend low', group: 'other-or-low-blend' },
    { name: 'Blend-High', group: 'high-blend' },
    { name: 'VI', group: null },
    { name: '', group: null },
    { name: 'constructor', group: null },
    { name: '__proto__', group: null },
  ])('$name is $group', ({ name, group }) => expect(cementGroup(name)).toBe(group));

  it('knows every name it offers', () => {
    expect(CEMENT_NAMES.map(cementGroup)).not.toContain(null);
  });
});
