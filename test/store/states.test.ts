import { expect, test } from "vitest";
import type { SessionRow } from "../../src/store/contract.js";
import { openStore, type Store, type UserRow } from "../../src/store/index.js";
import { describeStores, runSql } from "./stores.js";

const OWNER: UserRow = { id: "u1", name: "Owner", role: "owner", passwordHash: "hash-1" };
const PILOT: UserRow = { id: "u2", name: "Pilot", role: "pilot", passwordHash: "hash-2" };
const session = (tokenHash: string, user: string, expires: number): SessionRow => ({
  tokenHash,
  user,
  expires,
  lastSeen: 5,
});

describeStores("states and accounts", (place) => {
  const opened = async (): Promise<Store> => openStore(await place.freshUrl());

  test("states are replaced whole and found by the beginning of their key", async () => {
    const store = await opened();
    expect(await store.loadState("filter:lynx")).toBeUndefined();
    await store.saveState("filter:lynx", { temps: [1, 2], to: null });
    await store.saveState("filter:wren", "äöü%");
    await store.saveState("filter_lynx", false);
    await store.saveState("Filter:lynx", 0);
    await store.saveState("filter:lynx", { temps: [3] });
    expect(await store.loadState("filter:lynx")).toEqual({ temps: [3] });
    expect(await store.states("filter:")).toEqual(
      new Map<string, unknown>([
        ["filter:lynx", { temps: [3] }],
        ["filter:wren", "äöü%"],
      ]),
    );
    expect((await store.states("")).size).toBe(4);
    expect(await store.states("%")).toEqual(new Map());
    await expect(store.saveState("x", undefined)).rejects.toThrow(/^invalid value: undefined/);
    await store.close();
  });

  test("accounts, their sessions and device tokens", async () => {
    const store = await opened();
    await store.saveUser(OWNER);
    await store.saveUser(PILOT);
    await store.saveUser({ ...PILOT, role: "viewer" });
    expect(await store.users()).toEqual([OWNER, { ...PILOT, role: "viewer" }]);
    await store.saveSession(session("a", "u1", 100));
    await store.saveSession(session("b", "u1", 200));
    await store.saveSession(session("c", "u2", 300));
    await store.saveSession({ ...session("b", "u1", 250), lastSeen: 9 });
    expect(await store.session("b")).toEqual({ tokenHash: "b", user: "u1", expires: 250, lastSeen: 9 });
    await store.removeExpiredSessions(100);
    expect(await store.session("a")).toBeUndefined();
    await store.removeSession("b");
    expect(await store.session("b")).toBeUndefined();
    await store.saveSession(session("d", "u1", 400));
    await store.removeSessionsOf("u1");
    expect(await store.session("d")).toBeUndefined();
    expect(await store.session("c")).toBeDefined();
    const token = { id: "d1", name: "Logger", tokenHash: "t", role: "device", created: 7 } as const;
    await store.saveDeviceToken(token);
    await store.saveDeviceToken({ ...token, name: "Hangar logger" });
    expect(await store.deviceTokens()).toEqual([{ ...token, name: "Hangar logger" }]);
    await store.removeDeviceToken("d1");
    expect(await store.deviceTokens()).toEqual([]);
    await store.close();
  });

  test("a user's sessions go with the user, and nobody else can have one", async () => {
    const store = await opened();
    await store.saveUser(OWNER);
    await store.saveSession(session("a", "u1", 100));
    await store.removeUser("u1");
    expect(await store.session("a")).toBeUndefined();
    await expect(store.saveSession(session("b", "u1", 100))).rejects.toThrow(/foreign key/i);
    await store.close();
  });

  test("bases of one database share no state and no account", async () => {
    const url = await place.freshUrl();
    const [north, south] = [await openStore(url, { base: "north" }), await openStore(url, { base: "south" })];
    await north.saveState("runner", 1);
    await north.saveUser(OWNER);
    await north.saveSession(session("a", "u1", 100));
    expect(await south.loadState("runner")).toBeUndefined();
    expect(await south.users()).toEqual([]);
    expect(await south.session("a")).toBeUndefined();
    await south.removeUser("u1");
    expect(await north.users()).toHaveLength(1);
    await north.close();
    await south.close();
    await expect(openStore(url, { base: "" })).rejects.toThrow(/^invalid base: "" \(expected 1 to 200/);
  });

  test("the check passes while writing works and fails when it does not", async () => {
    const url = await place.freshUrl();
    const store = await openStore(url);
    await store.check();
    await store.check();
    await runSql(
      url,
      place.kind === "sqlite"
        ? "create trigger full before update on write_checks begin select raise(abort, 'disk is full'); end"
        : "alter table write_checks add constraint disk_is_full check (written = 'x') not valid",
    );
    await expect(store.check()).rejects.toThrow(/full/);
    await store.close();
    await expect(store.check()).rejects.toThrow();
  });
});
