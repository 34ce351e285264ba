import { endDatabase } from './reaper.mjs';

export default async function teardown() {
  await endDatabase(process.env.WALLCOURSE_TEST_FOLDER);
}
