import type { LogbookEvent, StoredEvent } from "../../logbook/index.js";

// The server's side of the logbook, as this app uses it.

/** What became of a batch of events. */
export interface Appended {
  readonly kept: readonly StoredEvent[];
  readonly known: readonly string[];
  readonly conflicting: readonly string[];
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
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ events }),
  });
}

export async function eventsAfter(
  api: string,
  sequence: number,
): Promise<Attempt<{ readonly events: readonly StoredEvent[]; readonly more: boolean }>> {
  return asked(`${api}/events?after=${sequence}`, {});
}

async function asked<T>(url: string, init: RequestInit): Promise<Attempt<T>> {
  let response: Response;
  try {
    response = await fetch(url, { credentials: "same-origin", ...init });
  } catch (error) {
    return { ok: false, why: "unreachable", message: String(error) };
  }
  if (response.ok) return { ok: true, value: (await response.json()) as T };
  const message = `${response.status} ${response.statusText}`;
  if (response.status === 401 || response.status === 403) return { ok: false, why: "signed-out", message };
  const why = response.status >= 500 || response.status === 429 ? "unreachable" : "refused";
  return { ok: false, why, message };
}
