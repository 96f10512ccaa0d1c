import { z } from "zod";
import { issueAt, record } from "../../documents/index.js";
import type { SwitchProtocol } from "./protocol.js";
import {
  couldMean,
  hearIssues,
  ON_TIME_PLACE,
  placesIn,
  pointer,
  topic,
  topicIssues,
  words,
} from "./shared.js";

const schema = record({
  kind: z.literal("mqtt"),
  say: record({
    topic,
    on: z.string().min(1).max(1000).meta({ description: "may carry {on_time_s}" }),
    off: z.string().min(1).max(1000),
    keep: z.boolean().exactOptional().meta({
      description: "the broker keeps off for a device that comes back later; on is never kept",
    }),
  }).meta({ description: "what the device is told" }),
  hear: record({ topic, pointer: pointer.exactOptional(), on: words, off: words }).meta({
    description: "what the device tells of itself; without a pointer the whole message counts",
  }),
  ask: record({ topic, payload: z.string().max(1000) })
    .exactOptional()
    .meta({
      description: "what makes the device tell its state, for devices that speak only when it changes",
    }),
});

type Via = z.infer<typeof schema>;

export const mqttSwitch: SwitchProtocol<typeof schema> = {
  schema,
  hasLastWill: true,
  onTexts: ({ say }) => [say.on],
  canBeToldOff: (via) => !couldMean(via.say.on, via.say.off) && !asksWithOn(via),
  secretNames: () => [],
  command: ({ say }) => ({ path: ["say", "topic"], text: say.topic }),
  state: ({ hear }) => ({ path: ["hear", "topic"], text: hear.topic }),
  beside: ({ ask, hear }) => [
    ...(ask === undefined ? [] : [{ path: ["ask", "topic"], text: ask.topic }]),
    { path: ["hear", "topic"], text: hear.topic },
  ],
  issues(via, path) {
    const at = (...keys: readonly string[]) => [...path, ...keys];
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
    if (ask !== undefined && asksWithOn(via))
      issues.push(issueAt(at("ask", "payload"), "something else than the on command", ask.payload));
    if (say.off.includes(ON_TIME_PLACE))
      issues.push(issueAt(at("say", "off"), `no ${ON_TIME_PLACE}: off has no time`, say.off));
    for (const key of ["on", "off"] as const) {
      for (const place of placesIn(say[key])) {
        if (place === ON_TIME_PLACE) continue;
        const expected = `no place to fill in but ${ON_TIME_PLACE}: it would be sent as it stands`;
        issues.push(issueAt(at("say", key), expected, place));
      }
    }
    return issues;
  },
};

function asksWithOn({ say, ask }: Via): boolean {
  return ask !== undefined && ask.topic === say.topic && couldMean(say.on, ask.payload);
}
