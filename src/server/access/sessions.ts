import type { Store, UserRow } from "../../store/index.js";
import type { AccessOptions } from "../options.js";
import { newToken, tokenHash } from "./secrets.js";

/** [ms] a session's last use is written down no more often, to spare the disk. */
const TOUCH = 60_000;

export interface Sessions {
  /** The token of a new session; only its hash is kept. */
  start(user: string): Promise<string>;
  /** Whose session it is; undefined once it was ended, lay idle or grew too old. `use` counts as use. */
  find(token: string, use: boolean): Promise<UserRow | undefined>;
  end(token: string): Promise<void>;
  /** [s] a session lasts at the longest. */
  readonly longest: number;
}

export function createSessions(store: Store, clock: () => number, access: AccessOptions): Sessions {
  const longest = (access.sessionLongestH ?? 12) * 3600e3;
  const idle = (access.sessionIdleMin ?? 30) * 60e3;

  return {
    longest: longest / 1000,
    async start(user) {
      const token = newToken();
      const now = clock();
      await store.removeExpiredSessions(now);
      await store.saveSession({ tokenHash: tokenHash(token), user, expires: now + longest, lastSeen: now });
      return token;
    },
    async find(token, use) {
      const session = await store.session(tokenHash(token));
      if (session === undefined) return undefined;
      const now = clock();
      if (now >= session.expires || now - session.lastSeen >= idle) {
        await store.removeSession(session.tokenHash);
        return undefined;
      }
      if (use && now - session.lastSeen >= TOUCH) await store.saveSession({ ...session, lastSeen: now });
      return (await store.users()).find(({ id }) => id === session.user);
    },
    end: (token) => store.removeSession(tokenHash(token)),
  };
}
