import type { LogbookEvent, StoredEvent } from "../../src/logbook/index.js";
import type { DeviceTokenRow, ProbeReading, SessionRow, Store, UserRow } from "../../src/store/index.js";

/** A store that forgets everything with the test; `broken` makes its check fail. */
export function memoryStore(clock: () => number): Store & { broken: boolean } {
  const events: StoredEvent[] = [];
  const readings = new Map<string, ProbeReading>();
  const users = new Map<string, UserRow>();
  const sessions = new Map<string, SessionRow>();
  const tokens = new Map<string, DeviceTokenRow>();
  const states = new Map<string, unknown>();
  const store: Store & { broken: boolean } = {
    broken: false,
    async append(batch) {
      const kept: StoredEvent[] = [];
      const known: string[] = [];
      const conflicting: string[] = [];
      for (const event of batch) {
        const there = events.find((each) => each.event.id === event.id);
        if (there === undefined) {
          const stored = {
            sequence: events.length + 1,
            received: new Date(clock()).toISOString(),
            event: structuredClone(event) as LogbookEvent,
          };
          events.push(stored);
          kept.push(stored);
        } else if (sameContent(there.event, event)) known.push(event.id);
        else conflicting.push(event.id);
      }
      return { kept, known, conflicting };
    },
    eventsAfter: async (sequence, limit) => events.filter((e) => e.sequence > sequence).slice(0, limit),
    eventsBefore: async ({ before = Number.POSITIVE_INFINITY, aircraft, kinds, limit }) =>
      events
        .filter((e) => e.sequence < before)
        .filter((e) => aircraft === undefined || ("aircraft" in e.event && e.event.aircraft === aircraft))
        .filter((e) => kinds === undefined || kinds.includes(e.event.kind))
        .reverse()
        .slice(0, limit),
    event: async (id) => events.find((each) => each.event.id === id),
    async appendReadings(rows) {
      let kept = 0;
      for (const row of rows) {
        const key = `${row.aircraft}/${row.probe}/${row.time}`;
        if (!readings.has(key)) kept += 1;
        readings.set(key, row);
      }
      return { kept, known: rows.length - kept };
    },
    readings: async ({ aircraft, probes, from, to, limit }) =>
      [...readings.values()]
        .filter((r) => r.aircraft === aircraft && r.time >= from && r.time < to)
        .filter((r) => probes === undefined || probes.includes(r.probe))
        .sort((a, b) => a.time - b.time)
        .slice(0, limit)
        .map(({ probe, time, tempC }) => ({ probe, time, low: tempC, mean: tempC, high: tempC, count: 1 })),
    async latestReadings() {
      const latest = new Map<string, ProbeReading>();
      for (const row of [...readings.values()].sort((a, b) => a.time - b.time)) {
        latest.set(`${row.aircraft}/${row.probe}`, row);
      }
      return [...latest.values()];
    },
    rollUp: async () => {},
    dropRawBefore: async () => 0,
    dropMinutesBefore: async () => 0,
    saveState: async (key, value) => void states.set(key, value),
    loadState: async (key) => states.get(key),
    states: async (prefix) => new Map([...states].filter(([key]) => key.startsWith(prefix))),
    users: async () => [...users.values()],
    saveUser: async (user) => void users.set(user.id, user),
    removeUser: async (id) => void users.delete(id),
    saveSession: async (session) => void sessions.set(session.tokenHash, session),
    session: async (hash) => sessions.get(hash),
    removeSession: async (hash) => void sessions.delete(hash),
    async removeSessionsOf(user) {
      for (const [hash, session] of sessions) if (session.user === user) sessions.delete(hash);
    },
    async removeExpiredSessions(now) {
      for (const [hash, session] of sessions) if (session.expires <= now) sessions.delete(hash);
    },
    deviceTokens: async () => [...tokens.values()],
    saveDeviceToken: async (token) => void tokens.set(token.id, token),
    removeDeviceToken: async (id) => void tokens.delete(id),
    async check() {
      if (store.broken) throw new Error("disk full");
    },
    close: async () => {},
  };
  return store;
}

function sameContent(a: unknown, b: unknown): boolean {
  const sorted = (value: unknown) =>
    JSON.stringify(value, (_, entry) =>
      typeof entry === "object" && entry !== null && !Array.isArray(entry)
        ? Object.fromEntries(Object.entries(entry).sort())
        : entry,
    );
  return sorted(a) === sorted(b);
}
