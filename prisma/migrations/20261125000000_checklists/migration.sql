-- The pre-pour checklist: its items as they were measured, and who ticked what.

alter type job_state add value 'ready-to-pour' after 'measured';

-- One row for each item of a measurement, in the order in which the crew walks; no id of its own, so that the largest job is stored fast.
create table checklist_items (
  supplier_id uuid not null,
  organisation_id uuid not null,
  measurement_id uuid not null,
  n integer not null,
  -- UUIDv5 of the key: the same for the same rule at the same place in every revision, so that links survive.
  item uuid not null,
  key text not null,
  -- sha256 of what the item says and counts.
  digest text not null,
  phase text not null,
  rule text not null,
  storey text not null,
  wall text,
  course integer,
  text text not null,
  counts jsonb not null,
  basis text not null,
  created_at timestamptz(3) not null,
  primary key (supplier_id, measurement_id, n),
  constraint checklist_items_measurement_fkey foreign key (supplier_id, measurement_id) references measurements (supplier_id, id)
);
create unique index checklist_items_item_key on checklist_items (supplier_id, measurement_id, item);

-- One row for each item and what it said when it was ticked. It counts while it stands and the measurement shown says the same.
create table checklist_ticks (
  supplier_id uuid not null,
  id uuid not null,
  organisation_id uuid not null,
  job_id uuid not null,
  item uuid not null,
  key text not null,
  digest text not null,
  -- False once it was taken back; the history tells who did.
  standing boolean not null,
  person_id uuid,
  person_name text not null,
  ticked_at timestamptz(3) not null,
  note text,
  photo_sha256 text,
  photo_media_type text,
  version integer not null,
  created_at timestamptz(3) not null,
  updated_at timestamptz(3) not null,
  primary key (supplier_id, id),
  constraint checklist_ticks_job_fkey foreign key (supplier_id, job_id) references jobs (supplier_id, id)
);
create unique index checklist_ticks_digest_key on checklist_ticks (supplier_id, job_id, item, digest);

do $policies$
declare
  tenant constant text := $$supplier_id = nullif(current_setting('app.supplier', true), '')::uuid$$;
  staff constant text := $$coalesce(current_setting('app.role', true), '') in ('support', 'sales', 'admin', 'system')$$;
  own constant text := $$organisation_id = nullif(current_setting('app.organisation', true), '')::uuid$$;
  name text;
begin
  foreach name in array array['checklist_items', 'checklist_ticks'] loop
    execute format('create policy tenant on %I to wallcourse_app using (%s and (%s or %s)) with check (%s and (%s or %s))',
      name, tenant, staff, own, tenant, staff, own);
    execute format('alter table %I enable row level security', name);
    execute format('alter table %I force row level security', name);
    execute format('grant select, insert on %I to wallcourse_app', name);
  end loop;
end
$policies$;
grant update on checklist_ticks to wallcourse_app;

create constraint trigger checklist_ticks_history after insert or update on checklist_ticks deferrable initially deferred
  for each row execute function guard_history();
