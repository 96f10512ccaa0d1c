import { type DocumentIssue, issueAt, type Path } from "../documents/index.js";
import { ON_TIME_PLACE, onTexts, requestTexts, type SwitchDescription, sendsOnTime } from "./description.js";
import { CONFIRM_DEFAULT_S, offMarginS, switchRules } from "./rules.js";

/** What is wrong with a switch beyond the shape of its description: what could not be made safe is refused. */
export function checkSwitch(of: SwitchDescription, path: Path): DocumentIssue[] {
  return [...onTimeIssues(of, path), ...mqttIssues(of, path), ...httpIssues(of, path)];
}

/** Probes are read from exactly one topic each. */
export function checkProbe(probe: { readonly topic?: string }, path: Path): DocumentIssue[] {
  return probe.topic === undefined ? [] : topicIssues(probe.topic, [...path, "topic"]);
}

/** What a person must know of a switch that is allowed but not safe in every case. */
export function cautionsOf(of: SwitchDescription): readonly string[] {
  if (of.on_time_s !== undefined) return [];
  return [
    "This switch has no on-time of its own. It goes off when the server dies only because the broker says so: when the " +
      "broker, its computer or the network dies as well, it stays on. Give it a device with an on-time, or a mains timer " +
      "in the same line.",
  ];
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
  const at = (key: string) => [...path, "via", key];
  const issues = [
    ...topicIssues(via.command_topic, at("command_topic")),
    ...topicIssues(via.state_topic, at("state_topic")),
    ...(via.ask ? topicIssues(via.ask.topic, [...at("ask"), "topic"]) : []),
  ];
  if (via.on === via.off) issues.push(issueAt(at("off"), "something else than the on command", via.off));
  if (via.state_on === via.state_off) {
    issues.push(issueAt(at("state_off"), "something else than state_on", via.state_off));
  }
  if (via.command_topic === via.state_topic) {
    const expected = "another topic than command_topic: else our own command would count as its confirmation";
    issues.push(issueAt(at("state_topic"), expected, via.state_topic));
  }
  if (via.off.includes(ON_TIME_PLACE)) {
    issues.push(issueAt(at("off"), `no ${ON_TIME_PLACE}: off has no time`, via.off));
  }
  return issues;
}

function httpIssues({ via }: SwitchDescription, path: Path): DocumentIssue[] {
  if (via.kind !== "http") return [];
  const issues: DocumentIssue[] = [];
  const at = (key: string) => [...path, "via", key];
  if (via.state.on === via.state.off) {
    issues.push(issueAt([...at("state"), "off"], "something else than on", via.state.off));
  }
  if (
    requestTexts(via.on).join("\n") === requestTexts(via.off).join("\n") &&
    via.on.method === via.off.method
  ) {
    issues.push(issueAt(at("off"), "another request than on", via.off.url));
  }
  if (requestTexts(via.off).some((text) => text.includes(ON_TIME_PLACE))) {
    issues.push(issueAt(at("off"), `no ${ON_TIME_PLACE}: off has no time`, via.off.url));
  }
  for (const text of [...onTexts(via), ...requestTexts(via.off), ...requestTexts(via.state.request)]) {
    for (const [place] of text.matchAll(/\{[A-Za-z0-9_]+\}/g)) {
      if (place === ON_TIME_PLACE || /^\{[A-Z][A-Z0-9_]*\}$/.test(place)) continue;
      issues.push(issueAt([...path, "via"], `{NAME} in capitals for a secret, or ${ON_TIME_PLACE}`, place));
    }
  }
  return issues;
}

/** Names of the secrets that a switch needs, each the NAME of an environment variable SOAKLINE_SECRET_NAME. */
export function secretNamesOf({ via }: SwitchDescription): readonly string[] {
  if (via.kind !== "http") return [];
  const texts = [via.on, via.off, via.state.request].flatMap(requestTexts);
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
