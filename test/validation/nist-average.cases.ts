import { nistValidation } from "./nist-cases.js";

export const NIST_AVERAGE_VALIDATION = nistValidation("average");
