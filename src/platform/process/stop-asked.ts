const LOOK_MS = 200;

/**
 * Settles with what first asks the process to stop: a signal, or the end of the shell through which npm ran the script. npm signals
 * that shell alone, and not every shell becomes the program or passes the signal on.
 *
 * @param environment of the process; npm names the script that it runs in `npm_lifecycle_event`
 */
export function stopAsked(environment: Readonly<Record<string, string | undefined>>): Promise<string> {
  return new Promise((settle) => {
    for (const name of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) process.once(name, () => settle(name));
    if (environment['npm_lifecycle_event'] === undefined) return;
    const shell = process.ppid;
    const looking = setInterval(() => {
      if (process.ppid === shell) return;
      clearInterval(looking);
      settle('end of npm');
    }, LOOK_MS).unref();
  });
}
