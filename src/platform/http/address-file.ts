import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';

/** Where a listening server can be reached from this machine. */
export function addressOf(bound: AddressInfo): string {
  const host = ['0.0.0.0', '::', '127.0.0.1', '::1'].includes(bound.address) ? '127.0.0.1' : bound.address;
  return `http://${host.includes(':') ? `[${host}]` : host}:${bound.port}`;
}

/** `DATA_DIR/address`: one line, written whole; the returned function takes it away again unless another server has written its own. */
export async function writeAddress(dataDir: string, address: string): Promise<() => Promise<void>> {
  const file = join(dataDir, 'address');
  await mkdir(dataDir, { recursive: true });
  await writeFile(`${file}.new`, `${address}\n`);
  await rename(`${file}.new`, file);
  return async () => {
    const written = await readFile(file, 'utf8').catch(() => '');
    if (written.trim() === address) await rm(file, { force: true });
  };
}
