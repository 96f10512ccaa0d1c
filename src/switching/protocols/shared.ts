import { z } from "zod";
import { type DocumentIssue, issueAt, type Path, record } from "../../documents/index.js";

// Shapes and checks that several ways to reach a switch or a probe share.

export const words = z.string().min(1).max(200);
export const topic = z.string().min(1).max(300);

/** How a value is taken from a message: the whole payload as text where there is no pointer. */
export const pointer = z
  .string()
  .regex(/^(\/([^~/]|~[01])*)*$/, { error: "a JSON pointer such as /ds18b20/temperature" })
  .meta({ description: "JSON pointer (RFC 6901) into the payload, such as /ds18b20/temperature" });

/** `{NAME}` in address, header or body stands for the environment variable SOAKLINE_SECRET_NAME: no secret is stored. */
export const requestSchema = record({
  method: z.enum(["GET", "POST", "PUT", "PATCH"]),
  url: z.url({ protocol: /^https?$/, error: "an address that begins with http:// or https://" }),
  headers: z.record(z.string(), z.string()).exactOptional(),
  body: z.string().max(2000).exactOptional(),
});

export type SwitchRequest = z.infer<typeof requestSchema>;

/** Where the on-time goes in an on command. */
export const ON_TIME_PLACE = "{on_time_s}";
/** Where a secret goes in a request. */
export const SECRET_PLACE = /\{([A-Z][A-Z0-9_]*)\}/g;

export function placesIn(text: string): readonly string[] {
  return [...text.matchAll(/\{[A-Za-z0-9_]+\}/g)].map(([place]) => place);
}

/** Whether a text is an on command, for whatever on-time; a time of 0 means off. */
export function couldMean(on: string, text: string): boolean {
  const literal = on.split(ON_TIME_PLACE).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return on === text || new RegExp(`^${literal.join("0*[1-9][0-9]*")}$`).test(text);
}

/** Wildcards would mix devices; a topic that begins with $ belongs to the broker. */
export function topicIssues(topic: string, path: Path): DocumentIssue[] {
  const bad = /[+#]/.test(topic) || topic.includes("\0") || topic.startsWith("$");
  return bad ? [issueAt(path, "one topic: no + or #, and not beginning with $", topic)] : [];
}

export function hearIssues(hear: { readonly on: string; readonly off: string }, at: Path): DocumentIssue[] {
  return hear.on === hear.off ? [issueAt([...at, "off"], "another word than hear.on", hear.off)] : [];
}
