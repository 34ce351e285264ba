import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of package.json, from src/platform/config and from dist/platform/config alike. */
export const PACKAGE_ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
