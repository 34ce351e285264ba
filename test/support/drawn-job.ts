import { readFileSync } from 'node:fs';
import { readRange } from '../../src/domain/range/read-range.js';
