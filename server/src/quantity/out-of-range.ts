/** A figure that nothing can be worked out from: it is no number, or outside what the work is good for. The message may be shown to a person. A class
 * of its own, for the engine throws RangeError too: "Maximum call stack size exceeded" is a fault of ours and says nothing of the job. */
export class OutOfRange extends Error {}
