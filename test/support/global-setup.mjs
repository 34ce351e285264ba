// Gives a test run a folder for its database. The server itself starts when the first test asks for it (database.ts), so that tests
// of the domain cost nothing. A reaper ends it even where the run is killed.
import { spawn } from 'node:child_process';
import { chmodSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export default function setup() {
  const folder = mkdtempSync(join(tmpdir(), 'wallcourse-test-'));
  chmodSync(folder, 0o755);
  process.env.WALLCOURSE_TEST_FOLDER = folder;
  const reaper = join(dirname(fileURLToPath(import.meta.url)), 'reaper.mjs');
  spawn(process.execPath, [reaper, String(process.pid), folder], { detached: true, stdio: 'ignore' }).unref();
}
