import { z } from 'zod';

export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export const TemplateQuery = z.object({
  range: z.string().min(1).max(40).optional().meta({ description: 'Code of the form range; left out: the first in force' }),
});
export type TemplateQuery = z.infer<typeof TemplateQuery>;
