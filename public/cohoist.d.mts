/** A document liftplan/1: its text, or the object that it says (schema/liftplan-1.json). */
export type Plan = string | { format: "liftplan/1"; [key: string]: unknown };

/** One document of a lift for other programs. */
export interface LiftFile {
  /** File name with its ending. */
  name: string;
  /** What it is. */
  line: string;
  data: Uint8Array;
}

/**
 * The calculation. Every function answers at once, in the thread that calls it: a report takes some milliseconds, advice up
 * to seconds, so that a page asks for that in a worker. What cannot be answered throws a CohoistError.
 */
export interface Cohoist {
  /** The report of a plan, the JSON text of a document liftreport/1 (schema/liftreport-1.json), whatever its verdict. */
  report(plan: Plan): string;
  /** The same with one more key, "advice": why not, what would do, what moves the answer. */
  advice(plan: Plan): string;
  /** The plan as the fragment of a link, without the #. */
  encode(plan: Plan): string;
  /** The plan in a link's fragment, with or without the #, as JSON text. */
  decode(fragment: string): string;
  /** Tables, matrices, set-points and scenes; throws when the lift has no forces, and the report says why. */
  files(plan: Plan): LiftFile[];
}

/** What was wrong; a faulty plan has a line a fault: where it is, what is wrong, what would fix it. */
export declare class CohoistError extends Error {
  lines: string[];
}

/** Loads the calculation. wasm: where library.wasm is, or what is in it; left out, it stands beside this module. */
export declare function load(options?: { wasm?: string | URL | BufferSource | WebAssembly.Module }): Promise<Cohoist>;
