// npm start: the API and the worker in one process, on every system's shell.
process.env.WORKER ??= 'inline';
await import('../../dist/main.js');
