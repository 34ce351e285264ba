import { chmod, chown, readFile, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

/** The unprivileged user a server started by root runs as; PostgreSQL refuses to run as root. */
export interface ServerUser {
  readonly uid: number;
  readonly gid: number;
}

const NOBODY = 65_534;

/** Null where the process is not root and the server runs as the process does. */
export async function serverUser(): Promise<ServerUser | null> {
  if (process.getuid?.() !== 0) return null;
  const lines = (await readFile('/etc/passwd', 'utf8')).split('\n').map((line) => line.split(':'));
  const entry = lines.find((fields) => fields[2] === String(NOBODY)) ?? lines.find((fields) => fields[0] === 'nobody');
  if (!entry) throw new Error('started as root, and /etc/passwd names no unprivileged user "nobody" for the database: start as another user, or name a server in DATABASE_URL');
  return { uid: Number(entry[2]), gid: Number(entry[3]) };
}

async function passable(folder: string, user: ServerUser): Promise<boolean> {
  const found = await stat(folder).catch(() => null);
  if (found === null) return true;
  const bit = found.uid === user.uid ? 0o100 : found.gid === user.gid ? 0o010 : 0o001;
  return (found.mode & bit) !== 0;
}

/** True when the user may pass through every folder on the way (folders still to be made count as passable). */
export async function reachable(path: string, user: ServerUser): Promise<boolean> {
  let folder = resolve(path);
  for (;;) {
    if (!(await passable(folder, user))) return false;
    const parent = dirname(folder);
    if (parent === folder) return true;
    folder = parent;
  }
}

/** Lets the user pass through this one folder, and nobody else: a folder of our own that is closed as temporary ones are. */
export async function openTo(folder: string, user: ServerUser): Promise<void> {
  const found = await stat(folder);
  await chown(folder, found.uid, user.gid);
  await chmod(folder, (found.mode & 0o707) | 0o010);
}
