package org.scrubline.training;

/**
 * An entry as typed.
 *
 * @param kind name of a {@link TrainingKind}
 * @param exercise name of an {@link Exercise}, or empty
 * @param day ISO date
 */
public record TrainingDraft(String kind, String exercise, String day, String said) {}
