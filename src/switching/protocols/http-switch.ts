import { z } from "zod";
import { issueAt, record } from "../../documents/index.js";
import type { SwitchProtocol } from "./protocol.js";
import {
  couldMean,
  hearIssues,
  ON_TIME_PLACE,
  placesIn,
  pointer,
  requestSchema,
  SECRET_PLACE,
  type SwitchRequest,
  words,
} from "./shared.js";

const schema = record({
  kind: z.literal("http"),
  say: record({ on: requestSchema, off: requestSchema }).meta({ description: "what the device is told" }),
  hear: record({ request: requestSchema, pointer: pointer.exactOptional(), on: words, off: words }).meta({
    description: "the request that asks for its state, and how the answer tells it",
  }),
});

export const httpSwitch: SwitchProtocol<typeof schema> = {
  schema,
  hasLastWill: false,
  onTexts: ({ say }) => textsOf(say.on),
  canBeToldOff: ({ say, hear }) => !requestsOn(say.on, say.off) && !requestsOn(say.on, hear.request),
  secretNames({ say, hear }) {
    const texts = [say.on, say.off, hear.request].flatMap(textsOf);
    return [
      ...new Set(texts.flatMap((text) => Array.from(text.matchAll(SECRET_PLACE), ([, name]) => name!))),
    ];
  },
  command: ({ say }) => ({ path: ["say", "on"], text: wholeText(say.on), shown: shown(say.on) }),
  state: ({ hear }) => ({ path: ["hear", "request"], text: wholeText(hear.request) }),
  beside: () => [],
  issues({ say, hear }, path) {
    const at = (...keys: readonly string[]) => [...path, ...keys];
    const issues = hearIssues(hear, at("hear"));
    if (requestsOn(say.on, say.off))
      issues.push(issueAt(at("say", "off"), "another request than on", shown(say.off)));
    for (const key of ["on", "off"] as const) {
      if (!requestsOn(say[key], hear.request)) continue;
      const expected = `another request than say.${key}: it is sent every few seconds`;
      issues.push(issueAt(at("hear", "request"), expected, shown(hear.request)));
    }
    for (const [keys, request] of [
      [["say", "off"], say.off],
      [["hear", "request"], hear.request],
    ] as const) {
      if (textsOf(request).some((text) => text.includes(ON_TIME_PLACE)))
        issues.push(issueAt(at(...keys), `no ${ON_TIME_PLACE}: only on has a time`, request.url));
    }
    for (const place of [say.on, say.off, hear.request].flatMap(textsOf).flatMap(placesIn)) {
      if (place === ON_TIME_PLACE || /^\{[A-Z][A-Z0-9_]*\}$/.test(place)) continue;
      issues.push(issueAt(path, `{NAME} in capitals for a secret, or ${ON_TIME_PLACE}`, place));
    }
    return issues;
  },
};

function textsOf({ url, headers = {}, body = "" }: SwitchRequest): readonly string[] {
  return [url, ...Object.values(headers), body];
}

function requestsOn(on: SwitchRequest, other: SwitchRequest): boolean {
  return couldMean(wholeText(on), wholeText(other));
}

/** A request as one text, so that two are the same when their texts are. */
function wholeText({ method, url, headers = {}, body = "" }: SwitchRequest): string {
  return [`${method} ${url}`, ...Object.entries(headers).map((h) => h.join(": ")), body]
    .filter((part) => part !== "")
    .join("\n");
}

/** Without headers, which may hold secrets. */
function shown({ method, url }: SwitchRequest): string {
  return `${method} ${url}`;
}
