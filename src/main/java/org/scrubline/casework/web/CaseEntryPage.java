package org.scrubline.casework.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;

/**
 * The form that logs or plans a case.
 *
 * @param action where it is sent
 * @param planned whether the case is still to come
 * @param programmeId programme it is logged in
 * @param programmes the person's other programmes, to change to
 * @param form what was typed and what is wrong with it
 * @param chosenFactors complexity factors ticked
 * @param readings both readings of an end the clock showed twice, else empty
 * @param band sentence about the band of the ticked factors; null until asked for
 * @param existing the case that has the reference already, when this person may see it
 * @param otherEyeOf reference of the case of the other eye; null when there is none
 */
record CaseEntryPage(
        String action,
        boolean planned,
        String programmeId,
        List<Link> programmes,
        FormView form,
        List<String> chosenFactors,
        List<Option> readings,
        @Nullable String band,
        @Nullable Link existing,
        @Nullable String otherEyeOf,
        Choices choices) {

    /**
     * What can be chosen.
     *
     * @param trainees empty when the person logs own cases only
     * @param supervisors empty when the person logs cases supervised only
     */
    record Choices(
            List<Option> procedures,
            List<Option> eyes,
            List<Option> sites,
            List<Option> trainees,
            List<Option> supervisors,
            List<Option> supervisions,
            List<Option> parts,
            List<Option> factors) {

        /** For an own case: no trainee is asked for. */
        Choices ownCase(List<Option> asked) {
            return new Choices(procedures, eyes, sites, List.of(), asked, supervisions, parts, factors);
        }
    }

    /** The same for a case of the person's own alone, sent elsewhere. */
    CaseEntryPage ownCase(String to) {
        return with(to, readings, choices.ownCase(choices.supervisors()));
    }

    /**
     * The same as a device keeps it: supervisors by their initials, and places for both readings of an end, which the
     * device fills in when a clock showed it twice.
     */
    CaseEntryPage forDevice() {
        List<Option> places = List.of(Option.of("1", "1"), Option.of("2", "2"));
        return with(action, places, choices.ownCase(Initials.of(choices.supervisors())));
    }

    private CaseEntryPage with(String to, List<Option> ends, Choices offered) {
        return new CaseEntryPage(
                to, planned, programmeId, List.of(), form, chosenFactors, ends, band, existing, otherEyeOf, offered);
    }

    /** What is ticked among choices of one answer. */
    public List<String> chosen(String field) {
        String value = form.value(field);
        return value == null ? List.of() : List.of(value);
    }
}
