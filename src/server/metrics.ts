import type { FastifyInstance } from "fastify";
import { Counter, Gauge, Histogram, type Registry } from "prom-client";

export interface ServerMetrics {
  readonly streams: Gauge;
  readonly signIns: Counter<"outcome">;
  readonly events: Counter<"outcome">;
  readonly readings: Counter<"outcome">;
}

/** Counts requests by route pattern, never by address: the number of series stays that of the routes. */
export function measure(app: FastifyInstance, registry: Registry): ServerMetrics {
  const registers = [registry];
  const seconds = new Histogram({
    name: "soakline_http_request_seconds",
    help: "Time to answer a request [s]; change streams are left out",
    labelNames: ["method", "route", "status"],
    buckets: [0.001, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 1, 5],
    registers,
  });
  app.addHook("onResponse", async (request, reply) => {
    const route = request.is404 ? "none" : (request.routeOptions.url ?? "none");
    if (route === STREAM) return;
    // Anybody can make up a method: those of the API have names here, the rest share one.
    const method = METHODS.has(request.method) ? request.method : "other";
    seconds.observe({ method, route, status: String(reply.statusCode) }, reply.elapsedTime / 1000);
  });
  return {
    streams: new Gauge({ name: "soakline_change_streams", help: "Open change streams", registers }),
    signIns: new Counter({
      name: "soakline_sign_ins_total",
      help: "Sign-in attempts",
      labelNames: ["outcome"],
      registers,
    }),
    events: new Counter({
      name: "soakline_posted_events_total",
      help: "Events posted to the API",
      labelNames: ["outcome"],
      registers,
    }),
    readings: new Counter({
      name: "soakline_posted_readings_total",
      help: "Readings posted to the API",
      labelNames: ["outcome"],
      registers,
    }),
  };
}

const STREAM = "/api/v1/changes";
const METHODS = new Set(["GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS"]);
