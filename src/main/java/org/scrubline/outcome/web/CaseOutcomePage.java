package org.scrubline.outcome.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;
import org.scrubline.platform.TableView;

/**
 * The outcome of one case.
 *
 * @param caseHref where the case is read; null for who enters outcomes and reads no cases
 * @param baseline what is known from before the operation; null when nothing is
 * @param remarks what a reader should know first, such as that the operator alone saw the eye
 * @param windows every visit that is expected, with its state
 * @param visits what was found, the earliest first
 * @param results one line a definition
 * @param history every entry, the newest first, also those put right
 * @param form what was typed into one of the forms
 * @param care what was ticked of the care given
 * @param after what was ticked of what ended the follow-up of this operation
 * @param correcting which entry the visit form puts right; null for a new visit
 * @param lists what the fields offer
 */
record CaseOutcomePage(
        String id,
        String title,
        @Nullable String caseHref,
        List<Fact> facts,
        @Nullable String baseline,
        List<String> remarks,
        TableView windows,
        List<VisitLine> visits,
        List<Result> results,
        List<HistoryLine> history,
        FormView form,
        List<String> care,
        List<String> after,
        @Nullable String correcting,
        Lists lists) {

    /** A fact; either part may be null. */
    record Fact(@Nullable String value, @Nullable String text) {}

    /** A visit; {@code ordinal} names its entry. */
    record VisitLine(int ordinal, String title, String findings, String note) {}

    /** What one definition says. */
    record Result(String says, String definition) {}

    /** An entry; {@code holds} while nothing put it right. */
    record HistoryLine(int ordinal, String text, String by, boolean holds) {}

    /** What can be chosen. */
    record Lists(
            List<Option> windows,
            List<Option> absences,
            List<Option> reasons,
            List<Option> sources,
            List<Option> chambers,
            List<Option> leakTests,
            List<Option> blebs,
            List<Option> visions,
            List<Option> effusions,
            List<Option> care,
            List<Option> after,
            List<Option> seenBy) {}

    /** The chosen value of a field as a list, which radios ask for. */
    public List<String> chosen(String field) {
        String value = form.value(field);
        return value == null ? List.of() : List.of(value);
    }
}
