import { z } from "zod";
import { record } from "../../documents/index.js";
import type { ProbeProtocol } from "./protocol.js";
import { pointer, topic, topicIssues } from "./shared.js";

const schema = record({
  kind: z.literal("mqtt"),
  topic: topic.meta({ description: "MQTT topic its readings arrive on" }),
  pointer: pointer.exactOptional(),
  time_pointer: pointer
    .exactOptional()
    .meta({ description: "ISO 8601 or seconds since 1970; left out, the time of arrival counts" }),
});

export const mqttProbe: ProbeProtocol<typeof schema> = {
  schema,
  issues: (via, path) => topicIssues(via.topic, [...path, "topic"]),
};
