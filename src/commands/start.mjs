// npm start: the API and the worker in one process, on every system's shell.
import { buildIfStale } from './build.mjs';

process.env.WORKER ??= 'inline';
buildIfStale();
await import('../../dist/main.js');
