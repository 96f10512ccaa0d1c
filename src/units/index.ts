export * from "./argument.js";
export * from "./other.js";
export * from "./sentence.js";
export * from "./temperature.js";
