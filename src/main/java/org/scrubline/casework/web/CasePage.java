package org.scrubline.casework.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A case as its people see it.
 *
 * @param title reference and procedure
 * @param facts short facts in a row
 * @param factors complexity factors with their points
 * @param complexityNote whether they were set in time
 * @param remarks what became of the case: planned, abandoned, converted, other eye
 * @param peopleTitle heading of the people, who took part or will
 * @param people trainees with the parts they claim
 * @param sheets who was asked to score, and how far it is
 * @param next what may be done about the case
 * @param empty why there is no sheet; null when there is one
 */
record CasePage(
        String title,
        List<Fact> facts,
        List<String> factors,
        String complexityNote,
        List<String> remarks,
        String peopleTitle,
        List<String> people,
        List<SheetLine> sheets,
        List<Link> next,
        @Nullable String empty) {

    /** A fact; either part may be null. */
    record Fact(@Nullable String value, @Nullable String text) {}

    /** One request for a score; no link for who may not open it. */
    record SheetLine(String text, @Nullable Link link) {}
}
