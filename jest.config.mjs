export default {
  testEnvironment: 'node',
  globalSetup: './test/support/global-setup.mjs',
  globalTeardown: './test/support/global-teardown.mjs',
  extensionsToTreatAsEsm: ['.ts'],
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  transform: {
    '^.+\\.ts$': [
      '@swc/jest',
      {
        jsc: {
          parser: { syntax: 'typescript', decorators: true },
          transform: { legacyDecorator: true, decoratorMetadata: true },
          target: 'es2022',
        },
        module: { type: 'es6' },
      },
    ],
  },
  testMatch: ['<rootDir>/test/**/*.test.ts'],
  maxWorkers: 2,
  workerIdleMemoryLimit: '1GB',
  testTimeout: 60_000,
};
