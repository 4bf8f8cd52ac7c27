package org.scrubline.casework.reference;

/**
 * A reference case as typed.
 *
 * @param procedure code of a procedure with a published rubric
 * @param band name of a {@link org.scrubline.rubric.Band}
 * @param film where the film is to be found, in words
 * @param closesOn ISO date
 */
public record ReferenceDraft(
        String reference, String title, String procedure, String band, String film, String closesOn) {}
