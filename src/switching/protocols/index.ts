import { z } from "zod";
import { PROBE_PROTOCOLS, SWITCH_PROTOCOLS } from "./all.js";
import type { ProbeProtocol, SwitchProtocol } from "./protocol.js";

export const switchViaSchema = union(SWITCH_PROTOCOLS);
export const probeViaSchema = union(PROBE_PROTOCOLS);

export type SwitchVia = z.infer<typeof switchViaSchema>;
export type ProbeVia = z.infer<typeof probeViaSchema>;

export function switchProtocol(via: SwitchVia): SwitchProtocol {
  return ofKind<SwitchProtocol>(SWITCH_PROTOCOLS, via.kind);
}

export function probeProtocol(via: ProbeVia): ProbeProtocol {
  return ofKind<ProbeProtocol>(PROBE_PROTOCOLS, via.kind);
}

function union<P extends readonly { readonly schema: z.ZodObject }[]>(protocols: P) {
  type Schema = P[number]["schema"];
  return z.discriminatedUnion("kind", protocols.map(({ schema }) => schema) as [Schema, ...Schema[]]);
}

function ofKind<P>(protocols: readonly unknown[], kind: string): P {
  const found = (protocols as readonly ProbeProtocol[]).find(
    ({ schema }) => (schema.shape.kind as z.ZodLiteral).value === kind,
  );
  if (found === undefined) throw new Error(`unknown kind: ${kind}`);
  return found as P;
}
