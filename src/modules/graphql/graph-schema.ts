import { ChecklistAnswer, TickedAnswer } from '../checklists/checklists.schemas.js';
import { schemaText } from '../contract/schema-text.js';
import { JobAnswer, JobList } from '../jobs/jobs.schemas.js';
import { MeAnswer } from '../people/people.schemas.js';
import { QuoteAnswer } from '../quotes/quotes.schemas.js';
import { BracingList } from '../takeoffs/bracing.schemas.js';
import { FindingList } from '../takeoffs/findings.schemas.js';
import { TakeoffAnswer } from '../takeoffs/takeoffs.schemas.js';
import { TicketAnswer, TicketList } from '../tickets/tickets.schemas.js';

const QUERY = `scalar JSON

type Query {
  me: Me
  job(id: ID!): Job
  jobs(first: Int, after: String): JobList
  quote(id: ID!): Quote
  ticket(id: ID!): Ticket
  tickets(first: Int, after: String, state: String, job: ID): TicketList
}

type Mutation {
  tickChecklistItem(job: ID!, item: ID!, note: String): TickedItem
  untickChecklistItem(job: ID!, item: ID!, note: String): TickedItem
}`;

/** The GraphQL schema: the answers of REST, and how they hang together. */
export const graphSchema = (): string =>
  `${QUERY}\n\n${schemaText([
    {
      schema: JobAnswer,
      added: [
        'takeoff(detail: String): Takeoff',
        'findings(first: Int, after: String): FindingList',
        'bracing(first: Int, after: String): BracingList',
        'checklist(first: Int, after: String): Checklist',
        'quotes: [Quote!]',
        'tickets: [Ticket!]',
      ],
    },
    { schema: JobList },
    { schema: TakeoffAnswer },
    { schema: FindingList },
    { schema: BracingList },
    { schema: ChecklistAnswer },
    { schema: TickedAnswer },
    { schema: QuoteAnswer },
    { schema: TicketAnswer },
    { schema: TicketList },
    { schema: MeAnswer },
  ])}\n`;
