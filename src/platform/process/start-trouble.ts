import type { Configuration } from '../config/configuration.js';

const DATABASE = new Set(['ECONNREFUSED', 'ECONNRESET', 'ENOTFOUND', 'EAI_AGAIN', 'ETIMEDOUT', 'EHOSTUNREACH', '28P01', '28000', '3D000']);
const FOLDER = new Set(['EEXIST', 'ENOTDIR', 'EACCES', 'EPERM', 'EROFS', 'ENOSPC']);

/** Why the program could not start: where a variable is to blame, its name and what would do; passwords are not told. */
export function startTrouble(error: unknown, configuration: Configuration | null): string {
  const message = error instanceof Error ? error.message : String(error);
  const { code, syscall } = error as { readonly code?: string; readonly syscall?: string };
  if (configuration === null || code === undefined) return message;
  if (syscall === 'listen')
    return `HOST=${configuration.host} PORT=${configuration.port} cannot be listened on (${message}): an address of this machine and a free port would do, or PORT=0`;
  if (configuration.databaseUrl !== null && DATABASE.has(code))
    return `DATABASE_URL names a database that cannot be reached (${message}): a running PostgreSQL, 15 or newer, would do, or no DATABASE_URL for the one that comes with this program`;
  if (FOLDER.has(code))
    return `DATA_DIR=${configuration.dataDir} cannot be used (${message}): a folder that this user may write to, or may make, would do`;
  return message;
}
