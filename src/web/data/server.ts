import type { NowDocument } from "../../documents/index.js";
import type { LogbookEvent, StoredEvent } from "../../logbook/index.js";

// The server's side of the logbook, as this app uses it.

/** What became of a batch of events. */
export interface Appended {
  readonly kept: readonly { readonly id: string; readonly sequence: number }[];
  readonly known: readonly string[];
  /** There already with other content; nothing was changed. */
  readonly conflicting: readonly string[];
  readonly refused: readonly {
    readonly index: number;
    readonly issues: readonly {
      readonly path: string;
      readonly expected: string;
      readonly received: string;
    }[];
  }[];
}

/** Whether there is an owner, and who you are. */
export interface Access {
  readonly owner: boolean;
  readonly you: { readonly name: string; readonly role: string } | null;
  readonly signed_in: boolean;
  readonly set_up: "here" | "with-code" | "done";
}

export type Attempt<T> =
  | { readonly ok: true; readonly value: T }
  /** "signed-out" waits for the user, "refused" for another request, the rest for time. */
  | { readonly ok: false; readonly why: "unreachable" | "signed-out" | "refused"; readonly message: string };

/** Where the server's API is: the page's own origin says, so that a page without a server asks nothing in vain. */
export async function serverAddress(): Promise<string | null> {
  if (!navigator.onLine) return null;
  try {
    const response = await fetch("server.json", { cache: "no-store" });
    if (!response.ok) return null;
    const { api } = (await response.json()) as { api?: unknown };
    return typeof api === "string" ? api : null;
  } catch {
    return null;
  }
}

export async function sendEvents(api: string, events: readonly LogbookEvent[]): Promise<Attempt<Appended>> {
  return asked(`${api}/events`, {
    method: "POST",
    headers: CHANGING,
    body: JSON.stringify({ events }),
  });
}

/** Goes with everything that changes something: another site's page cannot make a browser send it. */
const CHANGING = { "content-type": "application/json", "soakline-request": "web" };

export async function accessOf(api: string): Promise<Attempt<Access>> {
  return asked(`${api}/access`, {});
}

export async function signIn(api: string, name: string, password: string): Promise<Attempt<unknown>> {
  const body = JSON.stringify({ name, password });
  return asked(`${api}/access/session`, { method: "POST", headers: CHANGING, body });
}

/** Makes the first owner of a base that has none. */
export async function becomeOwner(
  api: string,
  { name, password, code }: { readonly name: string; readonly password: string; readonly code: string },
): Promise<Attempt<unknown>> {
  const body = JSON.stringify({ name, password, ...(code === "" ? {} : { code }) });
  return asked(`${api}/access/owner`, { method: "POST", headers: CHANGING, body });
}

export async function eventsAfter(
  api: string,
  sequence: number,
): Promise<Attempt<{ readonly events: readonly StoredEvent[]; readonly more: boolean }>> {
  return asked(`${api}/events?after=${sequence}`, {});
}

/** How every aircraft stands, as the base works it out with its probes. */
export async function estimatesOf(api: string): Promise<
  Attempt<{
    readonly estimates: readonly { readonly aircraft: string; readonly now: NowDocument }[];
  }>
> {
  return asked(`${api}/now`, {});
}

async function asked<T>(url: string, init: RequestInit): Promise<Attempt<T>> {
  let response: Response;
  try {
    response = await fetch(url, { credentials: "same-origin", ...init });
  } catch (error) {
    return { ok: false, why: "unreachable", message: String(error) };
  }
  if (response.ok) return { ok: true, value: (await response.json()) as T };
  const message = await reasonOf(response);
  if (response.status === 401 || response.status === 403) return { ok: false, why: "signed-out", message };
  const why = response.status >= 500 || response.status === 429 ? "unreachable" : "refused";
  return { ok: false, why, message };
}

/** What the server says is wrong, in its own words. */
async function reasonOf(response: Response): Promise<string> {
  try {
    const { error } = (await response.json()) as { error?: { message?: unknown } | string };
    const said = typeof error === "string" ? error : error?.message;
    if (typeof said === "string") return said;
  } catch {
    // No words came: the number has to do.
  }
  return `${response.status} ${response.statusText}`;
}
