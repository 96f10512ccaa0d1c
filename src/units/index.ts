export * from "./argument.js";
export * from "./other.js";
export * from "./temperature.js";
