import type { OnOff } from "../switching/index.js";

// Taking a value out of a message: the whole payload as text, or one place in it as JSON.

export type Taken =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly expected: string; readonly received: string };

/** The value at a JSON pointer (RFC 6901); undefined where there is none. */
export function atPointer(document: unknown, pointer: string): unknown {
  let value = document;
  if (pointer === "") return value;
  for (const raw of pointer.slice(1).split("/")) {
    const key = raw.replaceAll("~1", "/").replaceAll("~0", "~");
    if (Array.isArray(value)) {
      // An index as the RFC writes it: without leading zeros.
      value = /^(0|[1-9]\d*)$/.test(key) ? value[Number(key)] : undefined;
    } else if (typeof value === "object" && value !== null && Object.hasOwn(value, key)) {
      value = (value as Record<string, unknown>)[key];
    } else return undefined;
  }
  return value;
}

export function parsedJson(text: string): Taken {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return { ok: false, expected: "JSON", received: short(text) };
  }
}

/** What a state message says; what is neither of the two words is told, not guessed. */
export function stateFrom(
  text: string,
  pointer: string | undefined,
  words: { readonly on: string; readonly off: string },
): OnOff | { readonly expected: string; readonly received: string } {
  const expected = `${JSON.stringify(words.on)} or ${JSON.stringify(words.off)}`;
  if (pointer === undefined) return stateOf(text.trim(), words) ?? { expected, received: short(text) };
  const parsed = parsedJson(text);
  if (!parsed.ok) return parsed;
  const value = atPointer(parsed.value, pointer);
  const said = typeof value === "string" ? value : value === undefined ? "nothing" : JSON.stringify(value);
  return (value === undefined ? undefined : stateOf(said, words)) ?? { expected, received: short(said) };
}

function stateOf(said: string, words: { readonly on: string; readonly off: string }): OnOff | undefined {
  if (said === words.on) return "on";
  return said === words.off ? "off" : undefined;
}

export function short(text: string): string {
  const line = text.replaceAll(/\s+/g, " ");
  return line.length <= 60 ? line : `${line.slice(0, 59)}…`;
}
