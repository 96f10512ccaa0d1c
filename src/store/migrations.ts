import type { Dialect } from "./database.js";

export interface StoreMigration {
  /** What the store is of afterwards; each is one more than the one before. */
  readonly version: number;
  statements(dialect: Dialect): readonly string[];
}

/** Words that the two databases do not share. */
const WORDS = {
  sqlite: {
    whole: "integer",
    real: "real",
    bytes: "blob",
    strict: "strict",
    ordered: "strict, without rowid",
    counted: "integer primary key",
  },
  postgres: {
    whole: "bigint",
    real: "double precision",
    bytes: "bytea",
    strict: "",
    ordered: "",
    counted: "integer generated always as identity primary key",
  },
} as const;

// A migration that has been released is never changed: stores of its version are out there.

const first: StoreMigration = {
  version: 1,
  statements: (dialect) => {
    const { whole, real, strict, ordered, counted } = tailed(dialect);
    return [
      `create table events (
        base text not null, sequence ${whole} not null, id text not null, happened ${whole} not null,
        received ${whole} not null, kind text not null, aircraft text, content text not null, hash text not null,
        primary key (base, sequence), unique (base, id)
      )${strict}`,
      "create index events_of_aircraft on events (base, aircraft, sequence)",
      "create index events_of_kind on events (base, kind, sequence)",
      ...ONLY_ADDED[dialect],
      `create table series (
        id ${counted}, base text not null, aircraft text not null, probe text not null,
        unique (base, aircraft, probe)
      )${strict}`,
      `create table readings (
        series integer not null references series (id), time ${whole} not null, temp_c ${real} not null,
        primary key (series, time)
      )${ordered}`,
      `create table states (
        base text not null, key text not null, value text not null, primary key (base, key)
      )${strict}`,
      `create table users (
        base text not null, id text not null, name text not null, role text not null, password_hash text not null,
        primary key (base, id)
      )${strict}`,
      `create table sessions (
        base text not null, token_hash text not null, user_id text not null, expires ${whole} not null,
        last_seen ${whole} not null, primary key (base, token_hash),
        foreign key (base, user_id) references users (base, id) on delete cascade
      )${strict}`,
      "create index sessions_of_user on sessions (base, user_id)",
      `create table device_tokens (
        base text not null, id text not null, name text not null, token_hash text not null, role text not null,
        created ${whole} not null, primary key (base, id)
      )${strict}`,
      `create table write_checks (base text not null primary key, written text not null)${strict}`,
    ];
  },
};

const ONLY_ADDED: Readonly<Record<Dialect, readonly string[]>> = {
  sqlite: ["update", "delete"].map(
    (change) =>
      `create trigger events_no_${change} before ${change} on events
       begin select raise(abort, 'events are only ever added'); end`,
  ),
  postgres: [
    `create function only_added() returns trigger language plpgsql as
     'begin raise exception ''events are only ever added''; end'`,
    "create trigger events_only_added before update or delete on events for each row execute function only_added()",
  ],
};

/** Readings by the minute, ten minutes and hour; what was kept before is to be rolled up. */
const rollups: StoreMigration = {
  version: 2,
  statements: (dialect) => {
    const { whole, real, bytes, strict, ordered } = tailed(dialect);
    return [
      `create table rollups (
        series integer not null references series (id), step integer not null, start ${whole} not null,
        low ${real} not null, total ${real} not null, high ${real} not null, count ${whole} not null,
        primary key (series, step, start)
      )${ordered}`,
      `create table hours (
        series integer not null references series (id), day ${whole} not null, content ${bytes} not null,
        primary key (series, day)
      )${ordered}`,
      `create table dirty (
        series integer not null references series (id), start ${whole} not null, primary key (series, start)
      )${ordered}`,
      `create table raw_from (base text not null primary key, time ${whole} not null)${strict}`,
      "insert into dirty (series, start) select distinct series, time - time % 600000 from readings",
    ];
  },
};

/** Events of a newer form may be among those kept: an earlier program would not know them, and refuses from here on. */
const newEvents = (version: number): StoreMigration => ({ version, statements: () => [] });

export const STORE_MIGRATIONS: readonly StoreMigration[] = [first, rollups, newEvents(3), newEvents(4)];

function tailed(dialect: Dialect) {
  const { strict, ordered, ...rest } = WORDS[dialect];
  return { ...rest, strict: ` ${strict}`, ordered: ` ${ordered}` };
}
