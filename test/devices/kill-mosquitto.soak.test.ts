import { startMosquitto } from "./brokers.js";
import { describeKills } from "./kills.js";

describeKills("Mosquitto", startMosquitto, 25);
