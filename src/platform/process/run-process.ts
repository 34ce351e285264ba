import { Configuration } from '../config/configuration.js';
import { startPlatform, type Platform } from '../platform.js';
import { startTrouble } from './start-trouble.js';
import { stopAsked } from './stop-asked.js';

/** Stops what was started; asked once. */
export type Stop = () => Promise<void>;

/** Gone too far to end well: say why and leave with a failure. A second signal means that nobody wants to wait. */
function leaveAtOnce(reason: string): never {
  process.stderr.write(`${reason}\n`);
  process.exit(1);
}

/**
 * The life of a process: read the configuration, open the platform, start, wait for a signal, stop in order.
 *
 * @param start starts the process's own part and answers how to stop it
 */
export async function runProcess(start: (platform: Platform) => Promise<Stop>): Promise<void> {
  const signal = stopAsked(process.env);
  let platform: Platform | null = null;
  let configuration: Configuration | null = null;
  try {
    const read = (configuration = Configuration.read(process.env));
    platform = await startPlatform(read);
    const { log } = platform;
    process.on('unhandledRejection', (error) => log.error({ err: error }, 'a promise was rejected and nobody looked'));
    process.on('uncaughtException', (error) => {
      log.fatal({ err: error }, 'an error that nobody caught');
      leaveAtOnce('stopped by an error that nobody caught');
    });
    const stop = await start(platform);
    const name = await signal;
    log.info({ signal: name }, 'stopping');
    for (const again of ['SIGTERM', 'SIGINT'] as const) process.once(again, () => leaveAtOnce('stopped at once'));
    setTimeout(() => leaveAtOnce('did not stop in time'), read.drainMs * 2 + 20_000).unref();
    await stop();
    await platform.close();
    log.info({}, 'stopped');
    process.exit(0);
  } catch (error) {
    platform?.log.fatal({ err: error }, 'could not start');
    await platform?.close();
    leaveAtOnce(startTrouble(error, configuration));
  }
}
