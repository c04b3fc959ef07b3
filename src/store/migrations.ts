/**
 * The schema, as numbered steps: entry n brings a database from version n to n + 1. An entry that has shipped is never
 * edited; a change is a new entry. The triggers hold the promise of docs/store.md that nothing is overwritten.
 */
export const migrations: readonly string[] = [
  `
  create table parts (
    id text primary key, demo integer not null, created_at text not null
  ) strict;

  create table files (
    sha256 text primary key, size integer not null, bytes blob not null, created_at text not null
  ) strict;

  create table part_revisions (
    part_id text not null references parts (id), revision integer not null, name text not null,
    thickness real not null, bends integer not null,
    file_name text, file_sha256 text references files (sha256),
    part_json text not null, refused_json text not null, change text not null,
    created_at text not null, by text not null,
    primary key (part_id, revision)
  ) strict;
  create index part_revisions_file on part_revisions (file_sha256);

  create table trials (
    id text primary key, part_id text not null, part_revision integer not null, part_name text not null,
    machine_id text not null, machine_name text not null, metal_id text not null, metal_name text not null,
    quantity integer not null, verdict text not null, summary_json text not null, trial_json text not null,
    created_at text not null, by text not null,
    foreign key (part_id, part_revision) references part_revisions (part_id, revision)
  ) strict;
  create index trials_part on trials (part_id, part_revision);

  create table defects (
    trial_id text primary key references trials (id), defect_json text not null
  ) strict;

  create table jobs (
    id text primary key, part_id text not null references parts (id), part_revision integer not null,
    machine_id text not null, metal_id text not null, quantity integer not null,
    state text not null, why text, trial_id text, created_at text not null, ended_at text, by text not null
  ) strict;
  create index jobs_state on jobs (state);

  create table purges (
    part_id text primary key references parts (id), revisions integer not null, trials integer not null,
    files_removed integer not null, files_kept integer not null, at text not null, by text not null
  ) strict;

  create table events (
    number integer primary key autoincrement, at text not null, by text not null,
    what text not null, subject text not null, detail_json text not null
  ) strict;

  create trigger part_revisions_stay before update on part_revisions
    begin select raise(abort, 'a revision is never overwritten'); end;
  create trigger part_revisions_kept before delete on part_revisions
    when not exists (select 1 from purges where part_id = old.part_id)
    begin select raise(abort, 'a revision goes only with a purge'); end;
  create trigger trials_stay before update on trials
    begin select raise(abort, 'a trial is never overwritten'); end;
  create trigger trials_kept before delete on trials
    when not exists (select 1 from purges where part_id = old.part_id)
    begin select raise(abort, 'a trial goes only with a purge'); end;
  create trigger files_stay before update on files
    begin select raise(abort, 'a file is never overwritten'); end;
  create trigger purges_stay before update on purges
    begin select raise(abort, 'a purge record is never changed'); end;
  create trigger purges_kept before delete on purges
    begin select raise(abort, 'a purge record is never removed'); end;
  create trigger events_stay before update on events
    begin select raise(abort, 'the audit record is never changed'); end;
  create trigger events_kept before delete on events
    begin select raise(abort, 'the audit record is never removed'); end;
  `,
  // machines, racks and condition records as revisions; a trial names those it was made with
  `
  create table shop_revisions (
    kind text not null check (kind in ('machine', 'rack', 'condition')), id text not null, revision integer not null,
    name text not null, demo integer not null, data_json text, change text not null, created_at text not null, by text not null,
    primary key (kind, id, revision)
  ) strict;
  create trigger shop_revisions_stay before update on shop_revisions
    begin select raise(abort, 'a revision is never overwritten'); end;
  create trigger shop_revisions_kept before delete on shop_revisions
    begin select raise(abort, 'a revision is never removed'); end;

  alter table trials add column machine_revision integer;
  alter table trials add column condition_revision integer;
  alter table trials add column rack_id text;
  alter table trials add column rack_revision integer;
  `,
  // pieces made and strips bent for a trial, as they were measured
  `
  create table pieces (
    id text primary key, trial_id text not null references trials (id), part_id text not null,
    kind text not null check (kind in ('piece', 'strip')), entry_json text not null,
    corrects text unique references pieces (id), created_at text not null, by text not null
  ) strict;
  create index pieces_trial on pieces (trial_id);
  create trigger pieces_stay before update on pieces
    begin select raise(abort, 'a measured piece is never overwritten'); end;
  create trigger pieces_kept before delete on pieces
    when not exists (select 1 from purges where part_id = old.part_id)
    begin select raise(abort, 'a measured piece goes only with a purge'); end;
  `,
  // cells of the fit board, by what they depend on: they can be made again, so they may go at any time
  `
  create table cells (
    key text primary key, part_id text not null, trial_id text not null references trials (id), cell_json text not null, created_at text not null
  ) strict;
  create index cells_part on cells (part_id);
  create index cells_trial on cells (trial_id);
  `,
  // the shop's measured deductions as revisions too: a new table, as a check of a column cannot be changed
  `
  create table shop_revisions_with_deductions (
    kind text not null check (kind in ('machine', 'rack', 'condition', 'deductions')), id text not null, revision integer not null,
    name text not null, demo integer not null, data_json text, change text not null, created_at text not null, by text not null,
    primary key (kind, id, revision)
  ) strict;
  insert into shop_revisions_with_deductions select * from shop_revisions order by rowid;
  drop table shop_revisions;
  alter table shop_revisions_with_deductions rename to shop_revisions;
  create trigger shop_revisions_stay before update on shop_revisions
    begin select raise(abort, 'a revision is never overwritten'); end;
  create trigger shop_revisions_kept before delete on shop_revisions
    begin select raise(abort, 'a revision is never removed'); end;

  alter table trials add column deductions_revision integer;
  `,
  // the shop's own metals as revisions too
  `
  create table shop_revisions_with_metals (
    kind text not null check (kind in ('machine', 'rack', 'condition', 'deductions', 'metal')), id text not null, revision integer not null,
    name text not null, demo integer not null, data_json text, change text not null, created_at text not null, by text not null,
    primary key (kind, id, revision)
  ) strict;
  insert into shop_revisions_with_metals select * from shop_revisions order by rowid;
  drop table shop_revisions;
  alter table shop_revisions_with_metals rename to shop_revisions;
  create trigger shop_revisions_stay before update on shop_revisions
    begin select raise(abort, 'a revision is never overwritten'); end;
  create trigger shop_revisions_kept before delete on shop_revisions
    begin select raise(abort, 'a revision is never removed'); end;

  alter table trials add column metal_revision integer;
  `,
  // fits with their question and board: rows that change until the fit has ended, gone with any of their parts
  `
  create table fits (
    id text primary key, summary_json text not null, fit_json text not null, created_at text not null
  ) strict;
  create table fit_parts (
    fit_id text not null references fits (id) on delete cascade, part_id text not null, primary key (fit_id, part_id)
  ) strict;
  create index fit_parts_part on fit_parts (part_id);
  `,
  // in which column a trial stands and what was asked of it; of those made before only a job's column is known: ours, as it stands. Cells bear their part's name in the key
  `
  alter table trials add column whose text;
  alter table trials add column fitted_option text;
  alter table trials add column asked_json text;
  drop trigger trials_stay;
  update trials set whose = 'ours' where id in (select trial_id from jobs where trial_id is not null);
  create trigger trials_stay before update on trials
    begin select raise(abort, 'a trial is never overwritten'); end;
  delete from cells;
  `,
];
