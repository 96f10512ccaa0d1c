import { randomUUID } from "node:crypto";
import { sql } from "kysely";
import type { Store } from "./contract.js";
import type { Database } from "./database.js";

export function stateKeeper(
  { kysely }: Database,
  base: string,
): Pick<Store, "saveState" | "loadState" | "states" | "check"> {
  return {
    saveState: async (key, state) => {
      const value = JSON.stringify(state);
      if (value === undefined) throw new TypeError("invalid value: undefined (expected what JSON can hold)");
      await kysely
        .insertInto("states")
        .values({ base, key, value })
        .onConflict((conflict) => conflict.columns(["base", "key"]).doUpdateSet({ value }))
        .execute();
    },
    loadState: async (key) => {
      const row = await kysely
        .selectFrom("states")
        .select("value")
        .where("base", "=", base)
        .where("key", "=", key)
        .executeTakeFirst();
      return row === undefined ? undefined : JSON.parse(row.value);
    },
    states: async (prefix) => {
      const rows = await kysely
        .selectFrom("states")
        .select(["key", "value"])
        .where("base", "=", base)
        .where(sql<boolean>`substr(key, 1, length(${sql.val(prefix)})) = ${sql.val(prefix)}`)
        .orderBy("key")
        .execute();
      return new Map(rows.map(({ key, value }) => [key, JSON.parse(value)]));
    },
    check: async () => {
      const written = randomUUID();
      await kysely
        .insertInto("write_checks")
        .values({ base, written })
        .onConflict((conflict) => conflict.column("base").doUpdateSet({ written }))
        .execute();
      const row = await kysely
        .selectFrom("write_checks")
        .select("written")
        .where("base", "=", base)
        .executeTakeFirst();
      if (row?.written !== written) throw new Error("the store does not give back what was written to it");
    },
  };
}
