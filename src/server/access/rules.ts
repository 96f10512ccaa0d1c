import type { Role } from "../../store/index.js";

// Who may do what, whole. A route that is not listed here cannot be registered.

interface Rule {
  /** Roles that may; "anyone" needs no sign-in. */
  readonly who: readonly Role[] | "anyone";
  /** Also whoever sits at this computer, signed in or not. */
  readonly orLocal?: true;
}

const ANYONE: Rule = { who: "anyone" };
const READ: Rule = { who: ["owner", "pilot", "viewer"] };
const WRITE: Rule = { who: ["owner", "pilot"] };
const OWN: Rule = { who: ["owner"] };

/** @internal for tests */
export const RULES: Readonly<Record<string, Rule>> = {
  "GET /healthz": ANYONE,
  "GET /readyz": ANYONE,
  "GET /metrics": { who: ["owner", "device"], orLocal: true },
  "GET /api/openapi.json": ANYONE,
  "GET /api/v1/access": ANYONE,
  "POST /api/v1/access/owner": ANYONE,
  "POST /api/v1/access/session": ANYONE,
  "DELETE /api/v1/access/session": READ,
  "PUT /api/v1/access/password": READ,
  "GET /api/v1/users": OWN,
  "POST /api/v1/users": OWN,
  "DELETE /api/v1/users/:id": OWN,
  "GET /api/v1/tokens": OWN,
  "POST /api/v1/tokens": OWN,
  "DELETE /api/v1/tokens/:id": OWN,
  "GET /api/v1/base": READ,
  "GET /api/v1/events": READ,
  "POST /api/v1/events": WRITE,
  "GET /api/v1/readings": READ,
  "GET /api/v1/readings.csv": READ,
  "POST /api/v1/readings": { who: ["owner", "pilot", "device"] },
  "GET /api/v1/plans": READ,
  "GET /api/v1/now": READ,
  "POST /api/v1/switches/:aircraft/:id": WRITE,
  "POST /api/v1/faults/:id/acknowledge": WRITE,
  "GET /api/v1/export.json": READ,
  "GET /api/v1/export.csv": READ,
  "GET /api/v1/changes": READ,
  // Calendar programs send nothing but the address: the token in it is the key, and opens nothing else.
  "GET /api/v1/calendar.ics": ANYONE,
  "GET /server.json": ANYONE,
  "GET /*": ANYONE,
  "HEAD /*": ANYONE,
};

export function ruleOf(method: string, pattern: string): Rule | undefined {
  return RULES[`${method} ${pattern}`];
}

/** Methods that some route answers to at a path of the API. */
export function allowedMethods(path: string): string[] {
  return PATTERNS.filter(({ matches }) => matches.test(path)).map(({ method }) => method);
}

const PATTERNS = Object.keys(RULES)
  .filter((route) => !route.endsWith(" /*"))
  .map((route) => {
    const [method = "", pattern = ""] = route.split(" ");
    const source = pattern.replace(/[.]/g, "\\.").replace(/:[a-z]+/g, "[^/]+");
    return { method, matches: new RegExp(`^${source}$`) };
  });
