import { PassThrough } from "node:stream";
import type { Gauge } from "prom-client";
import { ApiError } from "./errors.js";
import type { Live, LiveChange } from "./live.js";
import type { Limits } from "./options.js";

export interface Streams {
  /**
   * A stream of changes in the form of server-sent events. It begins with the highest sequence kept, so that whoever
   * comes back knows what was missed; `stillAllowed` is asked with every sign of life.
   */
  open(client: {
    readonly address: string;
    readonly sequence: number;
    readonly seen: number | undefined;
    readonly stillAllowed: () => Promise<boolean>;
  }): PassThrough;
  closeAll(): void;
}

export function createStreams(
  live: Live,
  limits: Pick<Limits, "streams" | "streamsPerAddress" | "heartbeatS">,
  gauge: Gauge,
): Streams {
  const openOnes = new Map<PassThrough, string>();
  let closed = false;

  return {
    open({ address, sequence, seen, stillAllowed }) {
      if (closed) throw new ApiError("stopping", "The base is stopping.");
      const ofAddress = [...openOnes.values()].filter((each) => each === address).length;
      if (openOnes.size >= limits.streams || ofAddress >= limits.streamsPerAddress) {
        throw new ApiError("rate-limited", "Too many change streams are open.");
      }
      const stream = new PassThrough({ highWaterMark: BACKLOG });
      openOnes.set(stream, address);
      gauge.set(openOnes.size);

      // A client that reads slower than things happen is let go; it comes back and is told the newest sequence.
      const send = (text: string) => {
        if (!stream.writableEnded && !stream.write(text)) stream.destroy();
      };
      const stopListening = live.onChange((change) => send(messageOf(change)));
      const heartbeat = setInterval(() => {
        stillAllowed()
          .catch(() => false)
          .then((allowed) => (allowed ? send(": still here\n\n") : stream.end()));
      }, limits.heartbeatS * 1000);

      const gone = () => {
        stopListening();
        clearInterval(heartbeat);
        openOnes.delete(stream);
        gauge.set(openOnes.size);
      };
      stream.once("close", gone);
      stream.once("finish", gone);

      send(`retry: ${RETRY}\n\n`);
      if (seen === undefined || seen < sequence) send(messageOf({ what: "logbook", sequence }));
      return stream;
    },
    closeAll() {
      closed = true;
      for (const stream of openOnes.keys()) {
        stream.end();
        // What a client does not read cannot be ended for it.
        setTimeout(() => stream.destroy(), PATIENCE).unref();
      }
    },
  };
}

/** [B] a client may lag behind. */
const BACKLOG = 64 * 1024;
/** [ms] a client has to take what is left when the base stops. */
const PATIENCE = 1000;
/** [ms] after which a client that lost its connection tries again. */
const RETRY = 3000;

/** JSON holds no line break, so no value can begin a line of its own. */
function messageOf({ what, ...data }: LiveChange): string {
  const id = "sequence" in data ? `id: ${data.sequence}\n` : "";
  return `event: ${what}\n${id}data: ${JSON.stringify(data)}\n\n`;
}
