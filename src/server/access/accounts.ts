import { randomUUID } from "node:crypto";
import { z } from "zod";
import type { Role, Store, UserRow } from "../../store/index.js";
import { ApiError } from "../errors.js";
import { LOCAL_NAME } from "./caller.js";
import { hashPassword, passwordIssues } from "./passwords.js";

export const accountNameSchema = z
  .string()
  .regex(/^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,63}$/u, "a name of 1 to 64 letters, digits, spaces, dots, hyphens")
  .meta({ description: "name to sign in with; capitals make no difference" });

/** Long enough for any password that is allowed; what is too long to be one is refused before it is hashed. */
export const passwordSchema = z.string().min(1).max(1024);

export interface Accounts {
  byName(name: string): Promise<UserRow | undefined>;
  /** The first owner; refused when there is one. */
  setUpOwner(name: string, password: string): Promise<UserRow>;
  add(name: string, password: string, role: AccountRole): Promise<UserRow>;
  /** Ends every session of the account. */
  changePassword(user: UserRow, password: string, path: string): Promise<void>;
  remove(id: string): Promise<void>;
}

type AccountRole = Exclude<Role, "device">;

export function createAccounts(store: Store): Accounts {
  const inTurn = oneAfterTheOther();

  async function byName(name: string): Promise<UserRow | undefined> {
    return (await store.users()).find((user) => folded(user.name) === folded(name));
  }

  async function add(name: string, password: string, role: AccountRole): Promise<UserRow> {
    if (RESERVED.has(folded(name)))
      throw new ApiError("conflict", "This name is the program's own: choose another.");
    refuse(passwordIssues(password, "password", name));
    if ((await byName(name)) !== undefined)
      throw new ApiError("conflict", "There is an account of this name.");
    const user = { id: randomUUID(), name, role, passwordHash: await hashPassword(password) };
    await store.saveUser(user);
    return user;
  }

  return {
    byName,
    setUpOwner: (name, password) =>
      inTurn(async () => {
        const owners = (await store.users()).filter(({ role }) => role === "owner");
        if (owners.length > 0) throw new ApiError("conflict", "The owner has been set up already.");
        return add(name, password, "owner");
      }),
    add: (name, password, role) =>
      inTurn(async () => {
        const users = await store.users();
        if (!users.some((user) => user.role === "owner")) {
          throw new ApiError("conflict", "Set up the owner first.");
        }
        return add(name, password, role);
      }),
    changePassword: (user, password, path) =>
      inTurn(async () => {
        refuse(passwordIssues(password, path, user.name));
        await store.saveUser({ ...user, passwordHash: await hashPassword(password) });
        await store.removeSessionsOf(user.id);
      }),
    remove: (id) =>
      inTurn(async () => {
        const users = await store.users();
        const user = users.find((each) => each.id === id);
        if (user === undefined) throw new ApiError("unknown", "There is no such account.");
        if (user.role === "owner" && users.filter(({ role }) => role === "owner").length === 1) {
          throw new ApiError("conflict", "The last owner cannot be removed.");
        }
        await store.removeSessionsOf(id);
        await store.removeUser(id);
      }),
  };
}

/** The logbook calls by these names what no account did. */
const RESERVED: ReadonlySet<string> = new Set([LOCAL_NAME, "keeper", "soakline"]);

function refuse(issues: ReturnType<typeof passwordIssues>): void {
  if (issues.length > 0) throw new ApiError("invalid", "This password will not do.", issues);
}

function folded(name: string): string {
  return name.normalize("NFKC").toLowerCase();
}

/** Runs one task after the other, so that two cannot both see that there is no owner yet. */
function oneAfterTheOther(): <T>(task: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (task) => {
    const next = last.then(task, task);
    last = next.catch(() => undefined);
    return next;
  };
}
