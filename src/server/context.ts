import type {
  FastifyBaseLogger,
  FastifyInstance,
  RawReplyDefaultExpression,
  RawRequestDefaultExpression,
  RawServerDefault,
} from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import type { Accounts } from "./access/accounts.js";
import type { Sessions } from "./access/sessions.js";
import type { ServerMetrics } from "./metrics.js";
import type { Limits, ServerOptions } from "./options.js";
import type { Streams } from "./streams.js";

export type App = FastifyInstance<
  RawServerDefault,
  RawRequestDefaultExpression,
  RawReplyDefaultExpression,
  FastifyBaseLogger,
  ZodTypeProvider
>;

/** What the routes work with. */
export interface Context extends Pick<ServerOptions, "store" | "clock" | "live" | "access"> {
  readonly limits: Limits;
  readonly accounts: Accounts;
  readonly sessions: Sessions;
  readonly cookieName: string;
  readonly streams: Streams;
  readonly metrics: ServerMetrics;
}
