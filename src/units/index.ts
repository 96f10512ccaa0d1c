export * from "./other.js";
export * from "./temperature.js";
