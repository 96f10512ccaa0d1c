import { startEmbedded } from "./brokers.js";
import { describeKills } from "./kills.js";

/** Mosquitto takes the rest. */
describeKills("an embedded broker", startEmbedded, 8);
