-- The first shape of the database.
--
-- Every table carries supplier_id, which leads every key. A contractor's rows also carry organisation_id.
-- Programs speak as wallcourse_app, never as the owner; row level security is forced on every table and answers
-- nothing while no supplier is set. Business rows cannot be committed without a history event (guard_history).

-- Roles belong to the cluster, not to the database: another database may have made them already.
do $roles$
declare
  named text;
begin
  foreach named in array array['wallcourse_app', 'wallcourse_lookup'] loop
    if not exists (select from pg_roles where rolname = named) then
      begin
        execute format('create role %I nologin nosuperuser nobypassrls nocreatedb nocreaterole', named);
      exception when duplicate_object or unique_violation then null;
      end;
    end if;
    -- Since 16 the one who makes a role is its member but may not yet become it.
    if not pg_has_role(current_user, named, case when current_setting('server_version_num')::integer >= 160000 then 'set' else 'member' end) then
      execute format('grant %I to %I', named, current_user);
    end if;
  end loop;
end
$roles$;

create type person_role as enum ('contractor', 'support', 'sales', 'admin');
create type actor_role as enum ('contractor', 'support', 'sales', 'admin', 'system');
create type job_state as enum ('queued', 'running', 'measured', 'failed');
create type severity as enum ('note', 'advise', 'hold');
create type ticket_state as enum ('open', 'claimed', 'answered', 'closed');
create type quote_state as enum ('draft', 'issued', 'accepted', 'declined', 'withdrawn');
create type outbox_state as enum ('waiting', 'sent', 'dead');
create type answer_state as enum ('running', 'answered');

-- People -------------------------------------------------------------------------------------------------------------

create table suppliers (
  supplier_id uuid not null,
  code text not null,
  name text not null,
  time_zone text not null,
  currency text not null,
  -- What the supplier prints on quotes: address, terms, what is in and what is not.
  settings jsonb not null default '{}',
  version integer not null,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id)
);
create unique index suppliers_code_key on suppliers (code);

create table organisations (
  supplier_id uuid not null,
  id uuid not null,
  name text not null,
  place text,
  version integer not null,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint organisations_supplier_fkey foreign key (supplier_id) references suppliers (supplier_id)
);
create unique index organisations_name_key on organisations (supplier_id, name);

create table people (
  supplier_id uuid not null,
  id uuid not null,
  -- Null for the supplier's own staff.
  organisation_id uuid,
  name text not null,
  email text not null,
  role person_role not null,
  version integer not null,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint people_organisation_fkey foreign key (supplier_id, organisation_id) references organisations (supplier_id, id),
  constraint people_supplier_fkey foreign key (supplier_id) references suppliers (supplier_id),
  constraint people_contractor_has_organisation check ((role = 'contractor') = (organisation_id is not null))
);
create unique index people_email_key on people (supplier_id, email);
create index people_organisation_idx on people (supplier_id, organisation_id);

create table tokens (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid,
  person_id uuid not null,
  name text not null,
  -- sha256 of the bearer token; the token itself is shown once and kept nowhere.
  token_hash bytea not null,
  revoked_at timestamptz(3),
  version integer not null,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint tokens_person_fkey foreign key (supplier_id, person_id) references people (supplier_id, id)
);
create unique index tokens_token_hash_key on tokens (token_hash);
create index tokens_person_idx on tokens (supplier_id, person_id);

-- Catalogue ----------------------------------------------------------------------------------------------------------

-- A changed range is a new version: rows are written once and never altered.
create table form_ranges (
  supplier_id uuid not null,
  id uuid not null,
  code text not null,
  range_version integer not null,
  name text not null,
  in_force_from date not null,
  body jsonb not null,
  created_by uuid,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint form_ranges_supplier_fkey foreign key (supplier_id) references suppliers (supplier_id)
);
create unique index form_ranges_code_key on form_ranges (supplier_id, code, range_version);

-- The list in force on a date is the latest in_force_from not after it, then the highest list_version.
create table price_lists (
  supplier_id uuid not null,
  id uuid not null,
  code text not null,
  list_version integer not null,
  currency text not null,
  in_force_from date not null,
  valid_days integer not null,
  body jsonb not null,
  created_by uuid,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint price_lists_supplier_fkey foreign key (supplier_id) references suppliers (supplier_id)
);
create unique index price_lists_code_key on price_lists (supplier_id, code, list_version);
create index price_lists_in_force_idx on price_lists (supplier_id, in_force_from, list_version);

-- Jobs ---------------------------------------------------------------------------------------------------------------

-- What is stored on disk or in the object store, by content.
create table blobs (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid,
  sha256 text not null,
  bytes bigint not null,
  media_type text not null,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint blobs_supplier_fkey foreign key (supplier_id) references suppliers (supplier_id)
);
create unique index blobs_sha256_key on blobs (supplier_id, organisation_id, sha256) nulls not distinct;

create table jobs (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  number text not null,
  name text not null,
  state job_state not null,
  -- Revision of the schedule now in force; grows by one with every schedule put.
  revision integer not null,
  -- The measurement of that revision now shown; null until the first one is stored.
  measurement_id uuid,
  -- Why the last run failed, in a person's words; null otherwise.
  failure text,
  created_by uuid,
  version integer not null,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint jobs_organisation_fkey foreign key (supplier_id, organisation_id) references organisations (supplier_id, id)
);
create unique index jobs_number_key on jobs (supplier_id, number);
create index jobs_organisation_idx on jobs (supplier_id, organisation_id, id);

create table schedule_revisions (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  job_id uuid not null,
  revision integer not null,
  -- The canonical wall schedule, as the reader made it.
  schedule jsonb not null,
  created_by uuid,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint schedule_revisions_job_fkey foreign key (supplier_id, job_id) references jobs (supplier_id, id)
);
create unique index schedule_revisions_revision_key on schedule_revisions (supplier_id, job_id, revision);

-- The uploaded parts of one revision, in the order in which they came.
create table schedule_files (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  schedule_revision_id uuid not null,
  n integer not null,
  file_name text not null,
  media_type text not null,
  sha256 text not null,
  bytes bigint not null,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint schedule_files_revision_fkey foreign key (supplier_id, schedule_revision_id) references schedule_revisions (supplier_id, id)
);
create unique index schedule_files_n_key on schedule_files (supplier_id, schedule_revision_id, n);

create table measurements (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  job_id uuid not null,
  revision integer not null,
  engine text not null,
  range_id uuid not null,
  range_code text not null,
  range_version integer not null,
  -- sha256 over the advice that went in; the same work is never stored twice.
  advice_key text not null,
  forms integer not null,
  concrete_nm3 numeric(60, 0) not null,
  face_nm2 numeric(60, 0) not null,
  opening_nm2 numeric(60, 0) not null,
  -- Everything but the walls: units, cuts, materials, instructions, checks, questions.
  summary jsonb not null,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint measurements_job_fkey foreign key (supplier_id, job_id) references jobs (supplier_id, id),
  constraint measurements_range_fkey foreign key (supplier_id, range_id) references form_ranges (supplier_id, id)
);
create unique index measurements_result_key on measurements (supplier_id, job_id, revision, engine, range_id, advice_key);
alter table jobs add constraint jobs_measurement_fkey
  foreign key (supplier_id, measurement_id) references measurements (supplier_id, id);

create table measurement_walls (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  measurement_id uuid not null,
  n integer not null,
  storey text not null,
  mark text not null,
  -- The laid wall with its courses and pieces.
  wall jsonb not null,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint measurement_walls_measurement_fkey foreign key (supplier_id, measurement_id) references measurements (supplier_id, id)
);
create unique index measurement_walls_n_key on measurement_walls (supplier_id, measurement_id, n);

create table findings (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  job_id uuid not null,
  measurement_id uuid not null,
  n integer not null,
  code text not null,
  severity severity not null,
  -- Key of the question the finding belongs to; null for notes.
  question_key text,
  -- An answer given before has lifted it.
  lifted boolean not null,
  storey text,
  wall text,
  walls jsonb not null,
  course integer,
  at_mm double precision,
  numbers jsonb not null,
  source text not null,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint findings_measurement_fkey foreign key (supplier_id, measurement_id) references measurements (supplier_id, id),
  constraint findings_job_fkey foreign key (supplier_id, job_id) references jobs (supplier_id, id)
);
create unique index findings_n_key on findings (supplier_id, measurement_id, n);
create index findings_question_idx on findings (supplier_id, job_id, question_key);

-- How far a run has come; told to those who wait, never history.
create table job_progress (
  supplier_id uuid not null,
  job_id uuid not null,
  organisation_id uuid not null,
  revision integer not null,
  stage text not null,
  done integer not null,
  total integer not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, job_id),
  constraint job_progress_job_fkey foreign key (supplier_id, job_id) references jobs (supplier_id, id)
);

-- Tickets ------------------------------------------------------------------------------------------------------------

create table tickets (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  number text not null,
  job_id uuid not null,
  question_key text not null,
  code text not null,
  severity severity not null,
  question text not null,
  state ticket_state not null,
  assignee_id uuid,
  -- Revision of the schedule in which the question was last seen.
  revision integer not null,
  version integer not null,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint tickets_job_fkey foreign key (supplier_id, job_id) references jobs (supplier_id, id),
  constraint tickets_assignee_fkey foreign key (supplier_id, assignee_id) references people (supplier_id, id)
);
create unique index tickets_number_key on tickets (supplier_id, number);
create unique index tickets_question_key on tickets (supplier_id, job_id, question_key);
create index tickets_state_idx on tickets (supplier_id, state, id);

create table ticket_messages (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  ticket_id uuid not null,
  author_id uuid,
  author_name text not null,
  author_role actor_role not null,
  kind text not null,
  body text not null,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint ticket_messages_ticket_fkey foreign key (supplier_id, ticket_id) references tickets (supplier_id, id)
);
create index ticket_messages_ticket_idx on ticket_messages (supplier_id, ticket_id, id);

create table advice (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  job_id uuid not null,
  ticket_id uuid not null,
  question_key text not null,
  text text not null,
  lifts jsonb not null,
  author_id uuid,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint advice_job_fkey foreign key (supplier_id, job_id) references jobs (supplier_id, id),
  constraint advice_ticket_fkey foreign key (supplier_id, ticket_id) references tickets (supplier_id, id)
);
create index advice_job_idx on advice (supplier_id, job_id, id);

-- Quotes -------------------------------------------------------------------------------------------------------------

create table quotes (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  number text not null,
  revision integer not null,
  job_id uuid not null,
  job_revision integer not null,
  measurement_id uuid not null,
  price_list_id uuid not null,
  state quote_state not null,
  currency text not null,
  subtotal_minor bigint not null,
  tax_minor bigint not null,
  total_minor bigint not null,
  tax_place text,
  tax_rate text,
  quoted_on date not null,
  valid_until date not null,
  -- What else the paper says, frozen with the numbers: inclusions, cautions, findings, conditions.
  body jsonb not null,
  pdf_sha256 text,
  issued_at timestamptz(3),
  settled_at timestamptz(3),
  created_by uuid,
  version integer not null,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint quotes_job_fkey foreign key (supplier_id, job_id) references jobs (supplier_id, id),
  constraint quotes_measurement_fkey foreign key (supplier_id, measurement_id) references measurements (supplier_id, id),
  constraint quotes_price_list_fkey foreign key (supplier_id, price_list_id) references price_lists (supplier_id, id)
);
create unique index quotes_number_key on quotes (supplier_id, number, revision);
create index quotes_job_idx on quotes (supplier_id, job_id, id);

create table quote_lines (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  quote_id uuid not null,
  n integer not null,
  sku text not null,
  text text not null,
  quantity numeric(18, 6) not null,
  unit text not null,
  -- Decimal text as in the price list, so that no digit is lost or made up.
  unit_price text not null,
  amount_minor bigint not null,
  because jsonb not null,
  created_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint quote_lines_quote_fkey foreign key (supplier_id, quote_id) references quotes (supplier_id, id)
);
create unique index quote_lines_n_key on quote_lines (supplier_id, quote_id, n);

-- What happened ------------------------------------------------------------------------------------------------------

create table history_events (
  supplier_id uuid not null,
  id uuid not null,
  -- Null where the event is the supplier's own and no contractor may read it.
  organisation_id uuid,
  job_id uuid,
  kind text not null,
  subject_type text not null,
  subject_id uuid not null,
  data jsonb not null,
  person_id uuid,
  role actor_role not null,
  correlation_id text,
  -- The transaction that wrote it: what guard_history looks for.
  transaction_id bigint not null default (pg_current_xact_id()::text::bigint),
  created_at timestamptz(3) not null,
  primary key (supplier_id, id)
);
create index history_events_subject_idx on history_events (supplier_id, subject_id, id);
create index history_events_job_idx on history_events (supplier_id, job_id, id);

-- Events still to be told to the outside. Taken by state with skip locked, never by "id greater than the last one".
create table outbox (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid,
  event_id uuid not null,
  kind text not null,
  state outbox_state not null,
  attempts integer not null,
  created_at timestamptz(3) not null,
  sent_at timestamptz(3),
  primary key (supplier_id, id),
  constraint outbox_event_fkey foreign key (supplier_id, event_id) references history_events (supplier_id, id)
);
create index outbox_state_idx on outbox (supplier_id, state, id);

create table counters (
  supplier_id uuid not null,
  kind text not null,
  last bigint not null,
  primary key (supplier_id, kind),
  constraint counters_supplier_fkey foreign key (supplier_id) references suppliers (supplier_id)
);

-- The answer given to a POST that carried an Idempotency-Key.
create table idempotency_keys (
  supplier_id uuid not null,
  person_id uuid not null,
  organisation_id uuid,
  route text not null,
  key text not null,
  request_hash text not null,
  state answer_state not null,
  -- What the request had made when its transaction was committed.
  subject_type text,
  subject_id uuid,
  status integer,
  headers jsonb,
  body text,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, person_id, route, key)
);
create index idempotency_keys_created_idx on idempotency_keys (supplier_id, created_at);

-- Who sees what ------------------------------------------------------------------------------------------------------

do $policies$
declare
  tenant constant text := $$supplier_id = nullif(current_setting('app.supplier', true), '')::uuid$$;
  staff constant text := $$coalesce(current_setting('app.role', true), '') in ('support', 'sales', 'admin', 'system')$$;
  own constant text := $$organisation_id = nullif(current_setting('app.organisation', true), '')::uuid$$;
  name text;
begin
  -- A contractor's rows: the supplier's staff, and the organisation they belong to.
  foreach name in array array[
    'people', 'tokens', 'blobs', 'jobs', 'schedule_revisions', 'schedule_files', 'measurements', 'measurement_walls', 'findings',
    'job_progress', 'tickets', 'ticket_messages', 'advice', 'quotes', 'quote_lines', 'history_events', 'idempotency_keys'
  ] loop
    execute format('create policy tenant on %I to wallcourse_app using (%s and (%s or %s)) with check (%s and (%s or %s))',
      name, tenant, staff, own, tenant, staff, own);
  end loop;
  execute format('create policy tenant on organisations to wallcourse_app using (%s and (%s or id = nullif(current_setting(''app.organisation'', true), '''')::uuid)) with check (%s and %s)',
    tenant, staff, tenant, staff);
  -- What everybody at the supplier's desk reads and only staff write.
  foreach name in array array['suppliers', 'form_ranges', 'price_lists'] loop
    execute format('create policy tenant_read on %I for select to wallcourse_app using (%s)', name, tenant);
    execute format('create policy tenant_insert on %I for insert to wallcourse_app with check (%s and %s)', name, tenant, staff);
    execute format('create policy tenant_update on %I for update to wallcourse_app using (%s and %s) with check (%s and %s)',
      name, tenant, staff, tenant, staff);
  end loop;
  -- Written by every commit, read by staff only.
  execute format('create policy tenant_read on outbox for select to wallcourse_app using (%s and %s)', tenant, staff);
  execute format('create policy tenant_insert on outbox for insert to wallcourse_app with check (%s and (%s or %s))', tenant, staff, own);
  execute format('create policy tenant_update on outbox for update to wallcourse_app using (%s and %s) with check (%s and %s)',
    tenant, staff, tenant, staff);
  execute format('create policy tenant_delete on outbox for delete to wallcourse_app using (%s and %s)', tenant, staff);
  execute format('create policy tenant on counters to wallcourse_app using (%s) with check (%s)', tenant, tenant);

  for name in select tablename from pg_tables where schemaname = current_schema() and tablename <> '_prisma_migrations' loop
    execute format('alter table %I enable row level security', name);
    execute format('alter table %I force row level security', name);
    execute format('grant select, insert on %I to wallcourse_app', name);
  end loop;
end
$policies$;

-- Written once, never altered, never removed: form_ranges, price_lists, blobs, schedule_revisions, schedule_files, measurements,
-- measurement_walls, findings, ticket_messages, advice, quote_lines, history_events. Only these may change:
grant update on suppliers, organisations, people, tokens, jobs, job_progress, tickets, quotes, outbox, counters, idempotency_keys
  to wallcourse_app;
grant delete on outbox, idempotency_keys to wallcourse_app;

-- No business row without its event ----------------------------------------------------------------------------------

create function guard_history() returns trigger language plpgsql set search_path from current as $guard$
declare
  subject uuid;
begin
  if tg_table_name = 'suppliers' then
    subject := new.supplier_id;
  else
    subject := new.id;
  end if;
  if not exists (
    select from history_events
    where supplier_id = new.supplier_id and subject_id = subject and transaction_id = pg_current_xact_id()::text::bigint
  ) then
    raise exception 'row % of % was written without a history event', subject, tg_table_name using errcode = 'WC001';
  end if;
  return null;
end
$guard$;

do $guards$
declare
  name text;
begin
  foreach name in array array[
    'suppliers', 'organisations', 'people', 'tokens', 'form_ranges', 'price_lists', 'jobs', 'schedule_revisions', 'measurements',
    'tickets', 'ticket_messages', 'advice', 'quotes'
  ] loop
    execute format('create constraint trigger %I after insert or update on %I deferrable initially deferred for each row execute function guard_history()',
      name || '_history', name);
  end loop;
end
$guards$;

-- Doors that open before or beside the tenant ------------------------------------------------------------------------

-- Who a token speaks for, before any supplier is known. Runs as a role that may read three tables and nothing else.
create function actor_for_token(hash bytea)
  returns table (supplier_id uuid, organisation_id uuid, person_id uuid, role person_role)
  language sql stable security definer set search_path from current as $actor$
  select p.supplier_id, p.organisation_id, p.id, p.role
  from tokens t join people p on p.supplier_id = t.supplier_id and p.id = t.person_id
  where t.token_hash = hash and t.revoked_at is null
$actor$;

do $lookup$
begin
  execute format('grant usage, create on schema %I to wallcourse_lookup', current_schema());
  execute format('grant usage on schema %I to wallcourse_app', current_schema());
  alter function actor_for_token(bytea) owner to wallcourse_lookup;
  execute format('revoke create on schema %I from wallcourse_lookup', current_schema());
end
$lookup$;
grant select on tokens, people to wallcourse_lookup;
create policy lookup on tokens for select to wallcourse_lookup using (true);
create policy lookup on people for select to wallcourse_lookup using (true);
set local role wallcourse_lookup;
revoke all on function actor_for_token(bytea) from public;
grant execute on function actor_for_token(bytea) to wallcourse_app;
reset role;

-- A queue entry in the same commit as the rows it is about. The queue's own tables are closed to wallcourse_app.
create function enqueue(task text, payload json, key text default null, queue text default null, attempts integer default null)
  returns void language plpgsql security definer set search_path from current as $enqueue$
begin
  if nullif(current_setting('app.supplier', true), '') is null then
    raise exception 'no supplier is set' using errcode = 'WC002';
  end if;
  perform graphile_worker.add_job(task, payload, queue, null, attempts, key);
end
$enqueue$;
revoke all on function enqueue(text, json, text, text, integer) from public;
grant execute on function enqueue(text, json, text, text, integer) to wallcourse_app;
