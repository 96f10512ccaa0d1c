import type { FastifyReply } from "fastify";
import { z } from "zod";
import { record } from "../../documents/index.js";
import { accountNameSchema, passwordSchema } from "../access/accounts.js";
import { hasOwner, isLocal } from "../access/caller.js";
import { passwordFits } from "../access/passwords.js";
import { sameSecret } from "../access/secrets.js";
import { createSignInLimit, type SignInLimit } from "../access/sign-in-limit.js";
import type { App, Context } from "../context.js";
import { ApiError, errorSchema } from "../errors.js";

const whoSchema = record({ name: z.string(), role: z.enum(["owner", "pilot", "viewer", "device"]) });
const nothing = z.null().meta({ description: "done" });

/** Setting up the owner, signing in and out, one's own password. */
export function accessRoutes(app: App, context: Context): void {
  const countAttempt = createSignInLimit(app, context.limits);
  accessRoute(app, context);
  ownerRoute(app, context, countAttempt);
  signInRoute(app, context, countAttempt);
  signOutRoute(app, context);
  passwordRoute(app, context, countAttempt);
}

function cookieOf({ access }: Context) {
  return { path: "/", httpOnly: true, sameSite: "strict", secure: access.https } as const;
}

async function startSession(context: Context, reply: FastifyReply, user: string): Promise<void> {
  const { sessions, cookieName } = context;
  const token = await sessions.start(user);
  reply.setCookie(cookieName, token, { ...cookieOf(context), maxAge: sessions.longest });
}

/** Whether there is an owner, and who asks. */
function accessRoute(app: App, { store }: Context): void {
  app.get(
    "/api/v1/access",
    {
      schema: {
        summary: "Whether there is an owner, and who you are",
        response: {
          200: record({
            owner: z.boolean().meta({ description: "whether an owner is set up" }),
            you: whoSchema.nullable().meta({ description: "null when not signed in" }),
            signed_in: z.boolean(),
            set_up: z.enum(["here", "with-code", "done"]).meta({
              description: "how the first owner can be set up from where you are",
            }),
          }),
        },
      },
    },
    async (request) => {
      const owner = await hasOwner(store);
      const { caller } = request;
      return {
        owner,
        you: caller.by === "nobody" ? null : { name: caller.name, role: caller.role },
        signed_in: caller.by === "session",
        set_up: owner ? "done" : isLocal(request) ? "here" : "with-code",
      } as const;
    },
  );
}

/** Setting up the first owner. */
function ownerRoute(app: App, context: Context, countAttempt: SignInLimit): void {
  const { store, accounts, access } = context;
  app.post(
    "/api/v1/access/owner",
    {
      schema: {
        summary: "Set up the first owner; on this computer, or with the code printed at the start",
        body: record({
          name: accountNameSchema,
          password: passwordSchema,
          code: z.string().max(100).exactOptional(),
        }),
        response: { 201: whoSchema, "4xx": errorSchema },
      },
    },
    async (request, reply) => {
      const { name, password, code } = request.body;
      if (await hasOwner(store)) throw new ApiError("conflict", "The owner has been set up already.");
      if (!isLocal(request)) {
        await countAttempt(request, "first owner");
        if (access.setUpCode === undefined || code === undefined || !sameSecret(code, access.setUpCode)) {
          throw new ApiError(
            "not-allowed",
            "Set up the owner on the base's computer, or with its set-up code.",
          );
        }
      }
      const user = await accounts.setUpOwner(name, password);
      await startSession(context, reply, user.id);
      request.log.info({ account: name }, "owner set up");
      return reply.code(201).send({ name: user.name, role: user.role });
    },
  );
}

/** Signing in. */
function signInRoute(app: App, context: Context, countAttempt: SignInLimit): void {
  const { accounts, sessions, cookieName, metrics } = context;
  app.post(
    "/api/v1/access/session",
    {
      schema: {
        summary: "Sign in",
        body: record({ name: z.string().min(1).max(64), password: passwordSchema }),
        response: { 200: whoSchema, "4xx": errorSchema },
      },
    },
    async (request, reply) => {
      const { name, password } = request.body;
      await countAttempt(request, name);
      const user = await accounts.byName(name);
      if (!(await passwordFits(password, user?.passwordHash)) || user === undefined) {
        metrics.signIns.inc({ outcome: "failed" });
        request.log.warn({ account: name, address: request.ip }, "sign-in failed");
        throw new ApiError("sign-in-failed", "Name or password is wrong.");
      }
      // Whatever session the browser brought along ends: a planted one cannot become a signed-in one.
      const brought = request.cookies[cookieName];
      if (brought !== undefined) await sessions.end(brought);
      await startSession(context, reply, user.id);
      metrics.signIns.inc({ outcome: "done" });
      request.log.info({ account: user.name, address: request.ip }, "signed in");
      return { name: user.name, role: user.role };
    },
  );
}

/** Signing out. */
function signOutRoute(app: App, context: Context): void {
  const { sessions, cookieName } = context;
  app.delete(
    "/api/v1/access/session",
    { schema: { summary: "Sign out", response: { 204: nothing, "4xx": errorSchema } } },
    async ({ caller }, reply) => {
      if (caller.by === "session") await sessions.end(caller.token);
      reply.clearCookie(cookieName, cookieOf(context));
      return reply.code(204).send(null);
    },
  );
}

/** Changing one's own password. */
function passwordRoute(app: App, context: Context, countAttempt: SignInLimit): void {
  const { accounts } = context;
  app.put(
    "/api/v1/access/password",
    {
      schema: {
        summary: "Change your password; ends all your other sessions",
        body: record({ current: passwordSchema, next: passwordSchema }),
        response: { 204: nothing, "4xx": errorSchema },
      },
    },
    async (request, reply) => {
      const { caller } = request;
      if (caller.by !== "session")
        throw new ApiError("conflict", "You have no account here: set up the owner first.");
      await countAttempt(request, caller.name);
      const user = await accounts.byName(caller.name);
      if (user === undefined || !(await passwordFits(request.body.current, user.passwordHash))) {
        throw new ApiError("sign-in-failed", "The current password is wrong.");
      }
      await accounts.changePassword(user, request.body.next, "next");
      await startSession(context, reply, user.id);
      request.log.info({ account: user.name }, "password changed");
      return reply.code(204).send(null);
    },
  );
}
