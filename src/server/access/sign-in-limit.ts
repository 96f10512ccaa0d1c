import type { FastifyInstance, FastifyRequest } from "fastify";
import { ApiError } from "../errors.js";
import type { Limits } from "../options.js";

const WINDOW = 15 * 60e3;

/** Counts an attempt to guess a password, and refuses it once there were too many on the account or from the address. */
export type SignInLimit = (request: FastifyRequest, account: string) => Promise<void>;

export function createSignInLimit(
  app: FastifyInstance,
  { signInsPerAccount, signInsPerAddress }: Limits,
): SignInLimit {
  const accounts = new WeakMap<FastifyRequest, string>();
  const ofAddress = app.createRateLimit({ max: signInsPerAddress, timeWindow: WINDOW });
  const ofAccount = app.createRateLimit({
    max: signInsPerAccount,
    timeWindow: WINDOW,
    keyGenerator: (request) => accounts.get(request) ?? "",
  });

  return async (request, account) => {
    // Counted before the password is looked at: attempts made all at once count as well. Counting by the name given,
    // whether there is such an account or not, keeps the answer from telling.
    accounts.set(request, account.normalize("NFKC").toLowerCase());
    for (const limit of [ofAddress, ofAccount]) {
      const found = await limit(request);
      if (found.isAllowed || !found.isExceeded) continue;
      const minutes = Math.max(1, Math.ceil(found.ttl / 60e3));
      throw new ApiError("rate-limited", `Too many attempts. Try again in ${minutes} min.`);
    }
  };
}
