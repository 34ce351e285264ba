import { defineConfig } from 'prisma/config';

/** For those who use the prisma command beside the program; the program itself migrates at start (src/platform/database/migrate.ts). */
export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
  datasource: { url: process.env['DATABASE_URL'] ?? '' },
});
