export * from "./system.js";
