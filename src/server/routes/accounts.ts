import { z } from "zod";
import { record } from "../../documents/index.js";
import { accountNameSchema, passwordSchema } from "../access/accounts.js";
import { nameOf } from "../access/caller.js";
import type { App, Context } from "../context.js";
import { errorSchema } from "../errors.js";

const accountRoles = z.enum(["owner", "pilot", "viewer"]);
const userSchema = record({ id: z.string(), name: z.string(), role: accountRoles });
const byId = record({ id: z.string().min(1).max(100) });
const nothing = z.null().meta({ description: "done" });

/** The owner's list of accounts. */
export function accountRoutes(app: App, { store, accounts }: Context): void {
  app.get(
    "/api/v1/users",
    {
      schema: {
        summary: "Accounts",
        response: { 200: record({ users: z.array(userSchema) }), "4xx": errorSchema },
      },
    },
    async () => ({
      users: (await store.users())
        .flatMap(({ id, name, role }) => (role === "device" ? [] : [{ id, name, role }]))
        .sort((a, b) => a.name.localeCompare(b.name)),
    }),
  );

  app.post(
    "/api/v1/users",
    {
      schema: {
        summary: "Add an account",
        body: record({ name: accountNameSchema, password: passwordSchema, role: accountRoles }),
        response: { 201: userSchema, "4xx": errorSchema },
      },
    },
    async (request, reply) => {
      const { name, password, role } = request.body;
      const { id } = await accounts.add(name, password, role);
      request.log.info({ account: name, role, by: nameOf(request.caller) }, "account added");
      return reply.code(201).send({ id, name, role });
    },
  );

  app.delete(
    "/api/v1/users/:id",
    {
      schema: {
        summary: "Remove an account and end its sessions",
        params: byId,
        response: { 204: nothing, "4xx": errorSchema },
      },
    },
    async (request, reply) => {
      await accounts.remove(request.params.id);
      request.log.info({ account: request.params.id, by: nameOf(request.caller) }, "account removed");
      return reply.code(204).send(null);
    },
  );
}
