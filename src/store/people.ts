import type { DeviceTokenRow, Role, SessionRow, Store, UserRow } from "./contract.js";
import type { Database } from "./database.js";

type People = Pick<
  Store,
  | "users"
  | "saveUser"
  | "removeUser"
  | "saveSession"
  | "session"
  | "removeSession"
  | "removeSessionsOf"
  | "removeExpiredSessions"
  | "deviceTokens"
  | "saveDeviceToken"
  | "removeDeviceToken"
>;

/** A user's sessions go with the user. */
export function peopleKeeper({ kysely }: Database, base: string): People {
  const sessions = () => kysely.deleteFrom("sessions").where("base", "=", base);
  return {
    users: async () => {
      const rows = await kysely
        .selectFrom("users")
        .selectAll()
        .where("base", "=", base)
        .orderBy("id")
        .execute();
      return rows.map(
        ({ id, name, role, password_hash }): UserRow => ({
          id,
          name,
          role: role as Role,
          passwordHash: password_hash,
        }),
      );
    },
    saveUser: async ({ id, name, role, passwordHash }) => {
      const values = { name, role, password_hash: passwordHash };
      await kysely
        .insertInto("users")
        .values({ base, id, ...values })
        .onConflict((conflict) => conflict.columns(["base", "id"]).doUpdateSet(values))
        .execute();
    },
    removeUser: async (id) => {
      await kysely.deleteFrom("users").where("base", "=", base).where("id", "=", id).execute();
    },
    saveSession: async ({ tokenHash, user, expires, lastSeen }) => {
      const values = { user_id: user, expires, last_seen: lastSeen };
      await kysely
        .insertInto("sessions")
        .values({ base, token_hash: tokenHash, ...values })
        .onConflict((conflict) => conflict.columns(["base", "token_hash"]).doUpdateSet(values))
        .execute();
    },
    session: async (tokenHash) => {
      const row = await kysely
        .selectFrom("sessions")
        .selectAll()
        .where("base", "=", base)
        .where("token_hash", "=", tokenHash)
        .executeTakeFirst();
      if (row === undefined) return undefined;
      const { user_id, expires, last_seen } = row;
      return { tokenHash, user: user_id, expires, lastSeen: last_seen } satisfies SessionRow;
    },
    removeSession: async (tokenHash) => {
      await sessions().where("token_hash", "=", tokenHash).execute();
    },
    removeSessionsOf: async (user) => {
      await sessions().where("user_id", "=", user).execute();
    },
    removeExpiredSessions: async (now) => {
      await sessions().where("expires", "<=", now).execute();
    },
    deviceTokens: async () => {
      const rows = await kysely
        .selectFrom("device_tokens")
        .selectAll()
        .where("base", "=", base)
        .orderBy("id")
        .execute();
      return rows.map(
        ({ id, name, token_hash, role, created }): DeviceTokenRow => ({
          id,
          name,
          tokenHash: token_hash,
          role: role as Role,
          created,
        }),
      );
    },
    saveDeviceToken: async ({ id, name, tokenHash, role, created }) => {
      const values = { name, token_hash: tokenHash, role, created };
      await kysely
        .insertInto("device_tokens")
        .values({ base, id, ...values })
        .onConflict((conflict) => conflict.columns(["base", "id"]).doUpdateSet(values))
        .execute();
    },
    removeDeviceToken: async (id) => {
      await kysely.deleteFrom("device_tokens").where("base", "=", base).where("id", "=", id).execute();
    },
  };
}
