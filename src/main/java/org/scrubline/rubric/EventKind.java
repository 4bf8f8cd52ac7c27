package org.scrubline.rubric;

/**
 * An event that can be recorded on a step.
 *
 * @param code key of the event in records
 * @param name as shown
 * @param blocking whether it blocks "independent on this case"
 * @param needsReason whether a reason must be given with it: a {@link TakeoverReason} for the takeover, words otherwise
 */
public record EventKind(String code, String name, boolean blocking, boolean needsReason) {}
