import type { FastifyRequest } from "fastify";
import type { DeviceTokenRow, Role, Store } from "../../store/index.js";
import { hostName, isLoopbackAddress, isLoopbackName } from "./address.js";
import { tokenHash } from "./secrets.js";
import type { Sessions } from "./sessions.js";

/** Who asks. */
export type Caller =
  | { readonly by: "nobody" }
  /** Whoever sits at this computer, while no owner is set up. */
  | { readonly by: "local"; readonly role: "owner"; readonly name: string }
  | {
      readonly by: "session";
      readonly role: Role;
      readonly name: string;
      readonly user: string;
      readonly token: string;
    }
  | { readonly by: "token"; readonly role: Role; readonly name: string; readonly id: string };

/** How the logbook calls whoever sits at this computer while no owner is set up. */
export const LOCAL_NAME = "local";

export async function callerOf(
  request: FastifyRequest,
  { store, sessions, cookieName }: { store: Store; sessions: Sessions; cookieName: string },
): Promise<Caller> {
  const bearer = /^Bearer ([\w-]+)$/i.exec(request.headers.authorization ?? "")?.[1];
  if (request.headers.authorization !== undefined) {
    const token = bearer === undefined ? undefined : await tokenRow(store, bearer, "device");
    if (token === undefined) return { by: "nobody" };
    return { by: "token", role: token.role, name: token.name, id: token.id };
  }
  const cookie = request.cookies[cookieName];
  if (cookie !== undefined) {
    const user = await sessions.find(cookie, true);
    if (user !== undefined) {
      return { by: "session", role: user.role, name: user.name, user: user.id, token: cookie };
    }
  }
  if (isLocal(request) && !(await hasOwner(store))) return { by: "local", role: "owner", name: LOCAL_NAME };
  return { by: "nobody" };
}

/** Device tokens bring readings, calendar tokens (kept with the role of a viewer) open the calendar: nothing else. */
export async function tokenRow(
  store: Store,
  token: string,
  role: "device" | "viewer",
): Promise<DeviceTokenRow | undefined> {
  const hash = tokenHash(token);
  return (await store.deviceTokens()).find((row) => row.tokenHash === hash && row.role === role);
}

export async function hasOwner(store: Pick<Store, "users">): Promise<boolean> {
  return (await store.users()).some(({ role }) => role === "owner");
}

/** Whether the request comes from this computer, is meant for it by name, and was not passed on by a proxy. */
export function isLocal(request: FastifyRequest): boolean {
  const name = hostName(request.headers.host);
  return (
    isLoopbackAddress(request.socket.remoteAddress ?? "") &&
    name !== undefined &&
    isLoopbackName(name) &&
    PASSED_ON.every((header) => request.headers[header] === undefined)
  );
}

const PASSED_ON = ["forwarded", "via", "x-forwarded-for", "x-forwarded-host", "x-real-ip"] as const;

/** As the logbook and the log write it. */
export function nameOf(caller: Caller): string {
  return caller.by === "nobody" ? "nobody" : caller.name;
}
