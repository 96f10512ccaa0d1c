import { type DocumentIssue, issueAt, type Path } from "../documents/index.js";
import {
  type MqttDescription,
  ON_TIME_PLACE,
  type RequestDescription,
  requestTexts,
  type SwitchDescription,
  sendsOnTime,
} from "./description.js";
import { CONFIRM_DEFAULT_S, offMarginS, switchRules } from "./rules.js";

/** What is wrong with a switch beyond the shape of its description: what could not be made safe is refused. */
export function checkSwitch(of: SwitchDescription, path: Path): DocumentIssue[] {
  return [...onTimeIssues(of, path), ...mqttIssues(of, path), ...httpIssues(of, path)];
}

/** Probes are read from exactly one topic each. */
export function checkProbe(probe: { readonly topic?: string }, path: Path): DocumentIssue[] {
  return probe.topic === undefined ? [] : topicIssues(probe.topic, [...path, "topic"]);
}

function onTimeIssues(of: SwitchDescription, path: Path): DocumentIssue[] {
  const issues: DocumentIssue[] = [];
  const { on_time_s: onTimeS, via } = of;
  const at = [...path, "on_time_s"];
  const confirmS = of.confirm_within_s ?? CONFIRM_DEFAULT_S;
  if (onTimeS === undefined) {
    if (via.kind === "http") {
      issues.push(
        issueAt(
          at,
          "the time after which the device itself goes off: over plain HTTP nobody switches it off when the server dies",
          undefined,
        ),
      );
    }
    if (sendsOnTime(via))
      issues.push(issueAt(at, `a number, since the on command says ${ON_TIME_PLACE}`, undefined));
    return issues;
  }
  if (onTimeS < 3 * confirmS) {
    issues.push(
      issueAt(
        at,
        `at least three times confirm_within_s (${3 * confirmS} s), to be renewed in time`,
        onTimeS,
      ),
    );
  }
  const rules = switchRules(of, []);
  const longestS = rules.longestOnS - offMarginS(rules);
  if (!rules.sendsOnTime && onTimeS >= longestS) {
    const expected = `less than longest_on_min and the time to go off (${longestS} s), or an on command that says ${ON_TIME_PLACE}`;
    issues.push(issueAt(at, expected, onTimeS));
  }
  return issues;
}

function mqttIssues({ via }: SwitchDescription, path: Path): DocumentIssue[] {
  if (via.kind !== "mqtt") return [];
  const at = (...keys: readonly string[]) => [...path, "via", ...keys];
  const { say, hear, ask } = via;
  const issues = [
    ...topicIssues(say.topic, at("say", "topic")),
    ...topicIssues(hear.topic, at("hear", "topic")),
    ...(ask ? topicIssues(ask.topic, at("ask", "topic")) : []),
    ...hearIssues(hear, at("hear")),
  ];
  if (couldMean(say.on, say.off))
    issues.push(issueAt(at("say", "off"), "something else than the on command", say.off));
  if (say.topic === hear.topic) {
    const expected = "another topic than say.topic: else our own command would count as its confirmation";
    issues.push(issueAt(at("hear", "topic"), expected, hear.topic));
  }
  if (ask !== undefined && asksWithOn(via)) {
    issues.push(issueAt(at("ask", "payload"), "something else than the on command", ask.payload));
  }
  if (say.off.includes(ON_TIME_PLACE)) {
    issues.push(issueAt(at("say", "off"), `no ${ON_TIME_PLACE}: off has no time`, say.off));
  }
  for (const key of ["on", "off"] as const) {
    for (const place of placesIn(say[key])) {
      if (place === ON_TIME_PLACE) continue;
      const expected = `no place to fill in but ${ON_TIME_PLACE}: it would be sent as it stands`;
      issues.push(issueAt(at("say", key), expected, place));
    }
  }
  return issues;
}

function httpIssues({ via }: SwitchDescription, path: Path): DocumentIssue[] {
  if (via.kind !== "http") return [];
  const { say, hear } = via;
  const at = (...keys: readonly string[]) => [...path, "via", ...keys];
  const issues = hearIssues(hear, at("hear"));
  if (requestsOn(say.on, say.off)) {
    issues.push(issueAt(at("say", "off"), "another request than on", shownRequest(say.off)));
  }
  for (const key of ["on", "off"] as const) {
    if (!requestsOn(say[key], hear.request)) continue;
    const expected = `another request than say.${key}: it is sent every few seconds`;
    issues.push(issueAt(at("hear", "request"), expected, shownRequest(hear.request)));
  }
  for (const [keys, request] of [
    [["say", "off"], say.off],
    [["hear", "request"], hear.request],
  ] as const) {
    if (requestTexts(request).some((text) => text.includes(ON_TIME_PLACE))) {
      issues.push(issueAt(at(...keys), `no ${ON_TIME_PLACE}: only on has a time`, request.url));
    }
  }
  for (const text of [say.on, say.off, hear.request].flatMap(requestTexts)) {
    for (const place of placesIn(text)) {
      if (place === ON_TIME_PLACE || /^\{[A-Z][A-Z0-9_]*\}$/.test(place)) continue;
      issues.push(issueAt([...path, "via"], `{NAME} in capitals for a secret, or ${ON_TIME_PLACE}`, place));
    }
  }
  return issues;
}

function hearIssues(hear: { readonly on: string; readonly off: string }, at: Path): DocumentIssue[] {
  return hear.on === hear.off ? [issueAt([...at, "off"], "another word than hear.on", hear.off)] : [];
}

/**
 * Whether a switch may be told off and asked for its state: false where one of both could put it on, so that it is best
 * left alone.
 */
export function canBeToldOff({ via }: SwitchDescription): boolean {
  if (via.kind === "mqtt") return !couldMean(via.say.on, via.say.off) && !asksWithOn(via);
  return !requestsOn(via.say.on, via.say.off) && !requestsOn(via.say.on, via.hear.request);
}

function asksWithOn({ say, ask }: MqttDescription): boolean {
  return ask !== undefined && ask.topic === say.topic && couldMean(say.on, ask.payload);
}

function requestsOn(on: RequestDescription, other: RequestDescription): boolean {
  return couldMean(requestText(on), requestText(other));
}

/** A request as one text, so that two are the same when their texts are. */
export function requestText({ method, url, headers = {}, body = "" }: RequestDescription): string {
  return [`${method} ${url}`, ...Object.entries(headers).map((h) => h.join(": ")), body]
    .filter((part) => part !== "")
    .join("\n");
}

/** Without headers, which may hold secrets. */
export function shownRequest({ method, url }: RequestDescription): string {
  return `${method} ${url}`;
}

/** Whether a text is an on command, for whatever on-time; a time of 0 means off. */
function couldMean(on: string, text: string): boolean {
  const literal = on.split(ON_TIME_PLACE).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return on === text || new RegExp(`^${literal.join("0*[1-9][0-9]*")}$`).test(text);
}

function placesIn(text: string): readonly string[] {
  return [...text.matchAll(/\{[A-Za-z0-9_]+\}/g)].map(([place]) => place);
}

/** Names of the secrets that a switch needs, each the NAME of an environment variable SOAKLINE_SECRET_NAME. */
export function secretNamesOf({ via }: SwitchDescription): readonly string[] {
  if (via.kind !== "http") return [];
  const texts = [via.say.on, via.say.off, via.hear.request].flatMap(requestTexts);
  return [
    ...new Set(texts.flatMap((text) => [...text.matchAll(SECRET_PLACE)].map((match) => match[1] ?? ""))),
  ];
}

export const SECRET_PLACE = /\{([A-Z][A-Z0-9_]*)\}/g;

/** Wildcards would mix devices; a topic that begins with $ belongs to the broker. */
function topicIssues(topic: string, path: Path): DocumentIssue[] {
  const bad = /[+#]/.test(topic) || topic.includes("\0") || topic.startsWith("$");
  return bad ? [issueAt(path, "one topic: no + or #, and not beginning with $", topic)] : [];
}
