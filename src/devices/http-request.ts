import type { HeaterSwitch } from "../logbook/index.js";
import { ON_TIME_PLACE, SECRET_PLACE, type SwitchRequest, secretNamesOf } from "../switching/index.js";
import { errorText } from "./device.js";

export type Secrets = ReadonlyMap<string, string>;
export type Fetch = (url: string, init: RequestInit) => Promise<Response>;

const PREFIX = "SOAKLINE_SECRET_";

/** The secrets that a switch needs, from the environment; throws naming the first that is not there. */
export function secretsFor(
  of: HeaterSwitch,
  environment: Readonly<Record<string, string | undefined>>,
): Secrets {
  const secrets = new Map<string, string>();
  for (const name of secretNamesOf(of)) {
    const value = environment[PREFIX + name];
    if (value === undefined || value === "")
      throw new Error(`missing ${PREFIX}${name} (expected in the environment, for the switch ${of.id})`);
    secrets.set(name, value);
  }
  return secrets;
}

/** Sends a request of a template and gives the answer's text. Errors name the template, never what was filled in. */
export async function sentRequest(
  template: SwitchRequest,
  filling: { readonly secrets: Secrets; readonly onTimeS?: number },
  { fetch, signal }: { readonly fetch: Fetch; readonly signal: AbortSignal },
): Promise<string> {
  const what = `${template.method} ${template.url}`;
  const { url, init } = filled(template, filling);
  let response: Response;
  try {
    // A redirect could carry the secrets elsewhere.
    response = await fetch(url, { ...init, signal, redirect: "error" });
  } catch (error) {
    const name = error instanceof Error ? error.name : "";
    const why = name === "TimeoutError" || name === "AbortError" ? "no answer in time" : causeText(error);
    throw new Error(`${what}: ${withoutSecrets(why, filling.secrets)}`);
  }
  if (!response.ok) {
    await response.body?.cancel().catch(() => undefined);
    throw new Error(`${what}: answered ${response.status}`);
  }
  const text = await response.text();
  if (text.length > LONGEST_ANSWER)
    throw new Error(`${what}: the answer is longer than ${LONGEST_ANSWER} characters`);
  return text;
}

const LONGEST_ANSWER = 65_536;

function filled(
  template: SwitchRequest,
  { secrets, onTimeS }: { readonly secrets: Secrets; readonly onTimeS?: number },
): { readonly url: string; readonly init: RequestInit } {
  const fill = (text: string, as: (secret: string) => string) =>
    text
      .replaceAll(SECRET_PLACE, (_, name: string) => as(secretOf(secrets, name)))
      .replaceAll(ON_TIME_PLACE, () => {
        if (onTimeS === undefined) throw new Error(`missing on-time (expected one, for ${ON_TIME_PLACE})`);
        return String(onTimeS);
      });
  const { method, url, headers, body } = template;
  const inJson = body !== undefined && /^\s*[{[]/.test(body);
  return {
    url: fill(url, encodeURIComponent),
    init: {
      method,
      headers: Object.fromEntries(
        Object.entries(headers ?? {}).map(([name, value]) => [name, fill(value, (secret) => secret)]),
      ),
      ...(body === undefined
        ? {}
        : { body: fill(body, (secret) => (inJson ? JSON.stringify(secret).slice(1, -1) : secret)) }),
    },
  };
}

function secretOf(secrets: Secrets, name: string): string {
  const secret = secrets.get(name);
  if (secret === undefined) throw new Error(`missing ${PREFIX}${name}`);
  return secret;
}

/** fetch hides the reason in its cause. */
function causeText(error: unknown): string {
  const cause = error instanceof Error ? error.cause : undefined;
  const code = typeof cause === "object" && cause !== null && "code" in cause ? String(cause.code) : "";
  return code === "" ? errorText(error) : code;
}

function withoutSecrets(text: string, secrets: Secrets): string {
  let clean = text;
  for (const secret of secrets.values()) {
    clean = clean.replaceAll(secret, "…").replaceAll(encodeURIComponent(secret), "…");
  }
  return clean;
}
