import { test } from "vitest";
import { describePostgres } from "../store/stores.js";
import { openHangar } from "./hangar.js";
import { aNight } from "./night.js";

describePostgres("a keeper on PostgreSQL", ({ freshUrl }) => {
  test("a night, as in a file", async () => {
    const hangar = await openHangar({ at: await freshUrl() });
    try {
      await aNight(hangar);
    } finally {
      await hangar.close();
    }
  }, 60_000);
});
