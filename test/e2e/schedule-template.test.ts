import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import ExcelJS from 'exceljs';
import { startServer, type DemoPerson, type TestServer } from '../support/server.js';
import { call, submitted } from './api.js';
import { readFileSync } from 'node:fs';
import { exampleDocument } from '../../src/domain/schedule/template/example.js';
import { inches } from '../../src/domain/quantity/length.js';

const PATH = '/v1/schedules/template.xlsx';
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const EXAMPLE = exampleDocument({ code: 'HERON-16', cores: ['4', '6', '8', '10'], courseHeight: inches(16), buckThickness: inches(1.5) });

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(async () => {
  await server.stop();
});

const template = async (as: DemoPerson): Promise<Buffer> => {
  const response = await server.fetch(PATH, { as });
  expect([response.status, response.headers.get('content-type')]).toEqual([200, XLSX]);
  expect(response.headers.get('content-disposition')).toBe('attachment; filename="wall-schedule.xlsx"');
  return Buffer.from(await response.arrayBuffer());
};
const scheduleOf = async (id: string): Promise<Record<string, unknown>> => (await call(server, 'contractor', 'GET', `/v1/jobs/${id}/schedule`)).body;

describe('GET /v1/schedules/template.xlsx', () => {
  it.each(['contractor', 'neighbour', 'support', 'sales', 'admin'] as const)('%s gets a workbook that opens', async (person) => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load((await template(person)) as unknown as ArrayBuffer);
    expect(book.worksheets.map(({ name }) => name)).toEqual(['How to', 'walls', 'openings', 'features', 'storeys', 'job']);
    expect(book.getWorksheet('features')?.getCell('J2').dataValidation?.formulae).toEqual(['"4,6,8,10"']);
  });

  it('nobody gets none', async () => {
    const { status, body } = await call(server, null, 'GET', PATH);
    expect([status, body['code']]).toEqual([401, 'unauthenticated']);
  });

  it('the document of the interface names it and every role', () => {
    const document = JSON.parse(readFileSync('shared/contracts/openapi.json', 'utf8'));
    const operation = document.paths[PATH].get;
    expect([operation['x-roles'], Object.keys(operation.responses['200'].content)]).toEqual([['contractor', 'support', 'sales', 'admin'], [XLSX]]);
  });

  it('submitted as it is, it is the schedule of the same example sent as a document', async () => {
    const form = new FormData();
    form.append('files', new Blob([new Uint8Array(await template('contractor'))], { type: XLSX }), 'wall-schedule.xlsx');
    const response = await server.fetch('/v1/jobs', { method: 'POST', body: form, as: 'contractor' });
    const job = (await response.json()) as { id: string; state: string };
    expect([response.status, job.state]).toEqual([201, 'measured']);
    const sent = await submitted(server, EXAMPLE);
    expect(await scheduleOf(job.id)).toEqual(await scheduleOf(sent.id));
  });

  it('another range than those in force is refused with their codes; so is a client that takes no workbook', async () => {
    const unknown = await call<{ code: string; errors: object[] }>(server, 'sales', 'GET', `${PATH}?range=NONE`);
    expect([unknown.status, unknown.body.errors]).toEqual([422, [expect.objectContaining({ read: 'NONE', fix: 'one of: HERON-16' })]]);
    expect((await call(server, 'sales', 'GET', `${PATH}?range=HERON-16`)).status).toBe(200);
    expect((await call(server, 'sales', 'GET', PATH, undefined, { accept: 'text/html' })).status).toBe(406);
  });
});
