import { beforeAll, expect, test } from "vitest";
import { hashPassword } from "../../src/server/access/passwords.js";
import { RULES } from "../../src/server/access/rules.js";
import { tokenHash } from "../../src/server/access/secrets.js";
import { newTokenOf, openBase, setUpOwner, type TestBase } from "./base.js";

// Written out again by hand: the table the server goes by is not asked what it should say.

const CALLERS = ["nobody", "device", "calendar", "viewer", "pilot", "owner"] as const;
type CallerKind = (typeof CALLERS)[number];

const EVERYBODY = [...CALLERS];
const READERS: CallerKind[] = ["viewer", "pilot", "owner"];
const WRITERS: CallerKind[] = ["pilot", "owner"];
const OWNER: CallerKind[] = ["owner"];

const EXPECTED: Record<string, readonly CallerKind[]> = {
  "GET /healthz": EVERYBODY,
  "GET /readyz": EVERYBODY,
  "GET /metrics": ["device", "owner"],
  "GET /api/openapi.json": EVERYBODY,
  "GET /api/v1/access": EVERYBODY,
  "POST /api/v1/access/owner": EVERYBODY,
  "POST /api/v1/access/session": EVERYBODY,
  "DELETE /api/v1/access/session": READERS,
  "PUT /api/v1/access/password": READERS,
  "GET /api/v1/users": OWNER,
  "POST /api/v1/users": OWNER,
  "DELETE /api/v1/users/:id": OWNER,
  "GET /api/v1/tokens": OWNER,
  "POST /api/v1/tokens": OWNER,
  "DELETE /api/v1/tokens/:id": OWNER,
  "GET /api/v1/base": READERS,
  "GET /api/v1/events": READERS,
  "POST /api/v1/events": WRITERS,
  "GET /api/v1/readings": READERS,
  "GET /api/v1/readings.csv": READERS,
  "POST /api/v1/readings": ["device", "pilot", "owner"],
  "GET /api/v1/plans": READERS,
  "GET /api/v1/now": READERS,
  "POST /api/v1/switches/:aircraft/:id": WRITERS,
  "POST /api/v1/faults/:id/acknowledge": WRITERS,
  "GET /api/v1/export.json": READERS,
  "GET /api/v1/export.csv": READERS,
  "GET /api/v1/changes": READERS,
  "GET /api/v1/calendar.ics": EVERYBODY,
  "GET /server.json": EVERYBODY,
  "GET /*": EVERYBODY,
  "HEAD /*": EVERYBODY,
};

let base: TestBase;
let keys: Record<CallerKind, () => Promise<{ cookie?: string; token?: string }>>;

beforeAll(async () => {
  base = await openBase({
    limits: { requestsPerMinute: 1e6, signInsPerAccount: 1e6, signInsPerAddress: 1e6 },
  });
  const owner = await setUpOwner(base);
  const passwordHash = await hashPassword("four lame herons on ice");
  for (const role of ["viewer", "pilot"] as const) {
    await base.store.saveUser({ id: role, name: role, role, passwordHash });
  }
  const ownerId = (await base.store.users()).find(({ role }) => role === "owner")!.id;
  // A session of its own for every request, as one of them signs out.
  const session = async (user: string) => {
    const token = `${user}-${crypto.randomUUID()}`;
    const times = { expires: base.now + 3600e3, lastSeen: base.now };
    await base.store.saveSession({ tokenHash: tokenHash(token), user, ...times });
    return { cookie: `soakline_session=${token}` };
  };
  const device = await newTokenOf(base, "device", owner);
  const calendar = await newTokenOf(base, "calendar", owner);
  keys = {
    nobody: async () => ({}),
    device: async () => ({ token: device.token }),
    calendar: async () => ({ token: calendar.token }),
    viewer: () => session("viewer"),
    pilot: () => session("pilot"),
    owner: () => session(ownerId),
  };
});

test("the table of routes is the one written here", () => {
  expect(Object.keys(RULES).sort()).toEqual(Object.keys(EXPECTED).sort());
});

test("every route of the server is in the table", () => {
  const routes = base.app.printRoutes({ commonPrefix: false });
  const paths = new Set(Object.keys(EXPECTED).map((route) => route.split(" ")[1]!.replace("/*", "/")));
  const ends = [...routes.matchAll(/([^\s─]\S*) \(([A-Z, ]+)\)/g)].map(([, path]) => path!);
  expect(ends.length).toBeGreaterThan(20);
  for (const end of ends)
    expect(
      [...paths].some((path) => path.endsWith(end)),
      end,
    ).toBe(true);
});

for (const [route, allowed] of Object.entries(EXPECTED)) {
  test(`${route} is for ${allowed.length === CALLERS.length ? "everybody" : allowed.join(", ")}`, async () => {
    const [method = "", pattern = ""] = route.split(" ");
    const url = pattern.replace(":aircraft", "lynx").replace(":id", "nothing").replace("*", "");
    const outcomes: Record<string, boolean> = {};
    for (const caller of CALLERS) {
      const key = await keys[caller]();
      const answer = await base.app.inject({
        method: method as "GET",
        url,
        remoteAddress: "192.168.1.20",
        headers: {
          host: "base.lan",
          "soakline-request": "1",
          ...(key.cookie === undefined ? {} : { cookie: key.cookie }),
          ...(key.token === undefined ? {} : { authorization: `Bearer ${key.token}` }),
        },
        ...(method === "GET" ? {} : { payload: {} }),
        payloadAsStream: true,
      });
      const body =
        answer.statusCode === 401 || answer.statusCode === 403 ? await textOf(answer.stream()) : "";
      answer.stream().destroy();
      const stopped = /"code":"(not-signed-in|not-allowed)"/.test(body);
      outcomes[caller] = !stopped;
      if (stopped) expect(answer.statusCode, caller).toBe(body.includes("not-allowed") ? 403 : 401);
    }
    expect(outcomes).toEqual(Object.fromEntries(CALLERS.map((each) => [each, allowed.includes(each)])));
  });
}

test("metrics are also for whoever sits at the computer", async () => {
  expect((await base.ask({ url: "/metrics" })).status).toBe(200);
  expect((await base.ask({ url: "/metrics", from: "192.168.1.20" })).status).toBe(401);
  expect((await base.ask({ url: "/metrics", headers: { "x-forwarded-for": "10.0.0.1" } })).status).toBe(401);
});

async function textOf(stream: AsyncIterable<Buffer>): Promise<string> {
  let text = "";
  for await (const piece of stream) text += piece.toString();
  return text;
}
